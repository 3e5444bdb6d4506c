import { numberOf } from "@/app/_server/form-fields";
import { FAN_POWER_W } from "@/lib/comfort/desk-fan";
import { CONTROL_WORDS } from "@/lib/comfort-reports/control-then";
import { ACTION_WORDS, STATE_WORDS } from "@/lib/comfort-reports/report-state";
import type { FeltThen, ReportConditions } from "@/lib/services/comfort-reports/conditions";
import type { FeltInput } from "@/lib/services/comfort-reports/felt-inputs";
import type { ConditionKind, ReadingThen } from "@/lib/services/comfort-reports/readings-then";
import type { ReportStep } from "@/lib/services/comfort-reports/take-step";
import { formatLocal } from "@/lib/time/format";
import type { QuantityWords } from "@/lib/trends/quantity-words";
import { formatNumber } from "@/lib/units/format";
import { ANSWER_STATE_WORDS } from "../mail/view-model";

const KIND_WORDS: Record<ConditionKind, string> = {
  "zone-air-temp": "Zone air",
  "cooling-setpoint": "Cooling setpoint",
  "heating-setpoint": "Heating setpoint",
  airflow: "Airflow",
  "reheat-valve": "Reheat valve",
  "discharge-air-temp": "Discharge air",
  "cooling-stage": "Cooling",
  occupancy: "Schedule",
  "relative-humidity": "Relative humidity",
  "outdoor-air-temp": "Outdoor air",
};

export type ReadingLine = { kind: string; point: string; atReport: string; hourMean: string; age: string };

/** A trend at the moment, in the units of the building. */
export function readingLine(reading: ReadingThen, words: QuantityWords): ReadingLine {
  const { kind, name, value, hourMean, ageSeconds } = reading;
  return {
    kind: KIND_WORDS[kind],
    point: name,
    atReport: inWords(kind, value, words),
    hourMean: hourMean === null ? "" : inWords(kind, hourMean, words),
    age: ageWords(ageSeconds),
  };
}

function inWords(kind: ConditionKind, value: number, words: QuantityWords): string {
  switch (kind) {
    case "airflow":
      return words.airflow(value);
    case "reheat-valve":
    case "relative-humidity":
      return `${formatNumber(value, { decimals: 0 })} %`;
    case "cooling-stage":
      return onShare(value, "on", "off");
    case "occupancy":
      return onShare(value, "occupied", "unoccupied");
    default:
      return words.temp(value);
  }
}

const onShare = (value: number, on: string, off: string): string =>
  value === 0 ? off : value === 1 ? on : `${on} ${formatNumber(100 * value, { decimals: 0 })} %`;

/** Age of a sample: minutes, hours, days. */
export function ageWords(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.round(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.round(hours / 24)} days`;
}

/** What the page says first. */
export const controlSentence = ({ control, felt }: Pick<ReportConditions, "control" | "felt">): string =>
  felt === null
    ? "No zone air is recorded for that moment. A trend log that comes in later fills this page in."
    : `The zone was ${CONTROL_WORDS[control]}.`;

const signed = (vote: number): string => `${vote > 0 ? "+" : ""}${formatNumber(vote, { decimals: 1 })}`;

/** The vote beside what the standard's method allows for. */
export function feltSentence({ range, beside }: Pick<FeltThen, "range" | "beside">, votedWords: string): string {
  if (range.status !== "ok") {
    const [limit] = range.limits;
    return `The standard's method does not hold here: ${limit?.what ?? "an input"} is outside ${limit?.low ?? ""} to ${limit?.high ?? ""} ${limit?.unit ?? ""}.`;
  }
  const { low, high, middle } = range.pmv;
  const span = `${signed(low)} to ${signed(high)}, most likely ${signed(middle)}`;
  const place =
    beside === "within"
      ? "within it"
      : beside === "colder"
        ? "colder than it: look for a draught, cold surfaces, or one person's need"
        : "warmer than it: look for sun, equipment, or one person's need";
  return `For these surroundings the standard's method expects votes from ${span}; the vote, ${votedWords}, lies ${place}.`;
}

/** The word of caution that stands with every predicted vote. */
export const FELT_CAUTION =
  "A predicted vote is of an average person by the standard's method. Votes in air-conditioned offices disagree with it, so it neither proves nor disproves that a zone is too cold; what occupants say, heaters in use and simultaneous cooling do.";

export type InputLine = { what: string; value: string; range: string; origin: string; source: string };

export function inputLine({ what, spread, unit, origin, source }: FeltInput, words: QuantityWords): InputLine {
  const isTemp = unit === "°C";
  const isDifference = unit === "K";
  const say = (value: number): string =>
    isTemp
      ? words.temp(value)
      : isDifference
        ? `${value < 0 ? "\u2212" : ""}${words.size(value)}`
        : `${formatNumber(value, { significantDigits: 2 })} ${unit}`;
  return { what, value: say(spread.middle), range: `${say(spread.low)} to ${say(spread.high)}`, origin, source };
}

export type StepLine = {
  id: number;
  at: string;
  by: string;
  state: string;
  done: string;
  note: string;
  answer: string;
  /** How the answer's mail stands; empty where none was to be sent. */
  mail: string;
};

/** Steps with a report as the table shows them. */
export const stepLines = (steps: readonly ReportStep[], timeZone: string): StepLine[] =>
  steps.map(({ id, atMs, by, state, action, actedAtMs, note, answer, mail }) => ({
    id,
    at: formatLocal(atMs, timeZone, "date-time"),
    by,
    state: state ? STATE_WORDS[state] : "",
    done: action ? `${ACTION_WORDS[action]}, ${formatLocal(actedAtMs ?? atMs, timeZone, "date")}` : "",
    note,
    answer,
    mail: mail ? mailWords(mail, timeZone) : "",
  }));

function mailWords({ state, fault, settledAtMs }: NonNullable<ReportStep["mail"]>, timeZone: string): string {
  const at = settledAtMs === null ? "" : `, ${formatLocal(settledAtMs, timeZone, "date-time")}`;
  return [`${ANSWER_STATE_WORDS[state]}${at}`, fault].filter((words) => words !== "").join(": ");
}

/** Where an answer goes, as the form says under its field. */
export function answerHint({ isFollowed, isMailed }: { isFollowed: boolean; isMailed: boolean }): string {
  const mailed = "sent by mail to the address that was left";
  if (isFollowed)
    return `Shown at once at the private address of whoever sent it${isMailed ? `, and ${mailed}` : ""}, without your name.`;
  if (isMailed) return `This report has no private address: the answer is ${mailed}, without your name.`;
  return "This report has no private address: tell them yourself; what you told them is kept here.";
}

/** An air speed as the address has it [m/s]; null where it is not there, NaN where it is no number. */
export const airSpeedOf = (query: string | string[] | undefined): number | null =>
  numberOf({ airSpeed: [query].flat()[0] ?? "" }, "airSpeed");

/** What a fan draws for it. */
export const FAN_POWER_WORDS = `A desk fan draws ${FAN_POWER_W.low} to ${FAN_POWER_W.high} W for it (${FAN_POWER_W.source}); the register has the heaters of this zone.`;

export type FanLine = { speed: string; effect: string };

/** What a desk fan is worth, by the speed of its air. */
export const fanLines = ({ fan }: Pick<FeltThen, "fan">, words: QuantityWords): FanLine[] =>
  fan.map(({ airSpeedMps, lowK, highK }) => ({
    speed: formatNumber(airSpeedMps, { decimals: 1 }),
    effect: `${words.size(lowK)} to ${words.size(highK)}`,
  }));

/** How many would feel a draught at the air speed that was measured [m/s]; empty where none was. */
export function draughtSentence(
  { draught }: Pick<FeltThen, "draught">,
  airSpeedMps: number | null,
  words: QuantityWords,
): string {
  if (draught === null) return "";
  if (Number.isNaN(airSpeedMps)) return "Write the air speed as a number, such as 0.2.";
  const percent = (share: number): string => `${formatNumber(share, { decimals: 0 })} %`;
  if (draught.status === "ok")
    return `At this speed ${percent(draught.pct)} of people who sit would feel a draught at the neck if the air is as unsteady as usual (turbulence 40 %), ${percent(draught.lowPct)} if it is steady (10 %) and ${percent(draught.highPct)} if it is gusty (60 %).`;
  const { what, low, high, unit } = draught;
  const limits = unit === "°C" ? `${words.temp(low)} to ${words.temp(high)}` : `${low} to ${high} m/s`;
  return `No draught rate: its method holds for an ${what} of ${limits}.`;
}
