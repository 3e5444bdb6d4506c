import type { BothSides } from "@/lib/services/both-sides/expect";
import { type SharesAt, SIDE_FIGURES, type SideFigure } from "@/lib/services/both-sides/workings";
import { formatLocal } from "@/lib/time/format";
import { formatNumber, formatTemperature, formatTemperatureDifference } from "@/lib/units/format";

type Sides = NonNullable<BothSides>;
type Step = Sides["steps"][number];

const at = ({ steps }: Sides, shiftK: number): Step | undefined => steps.find((step) => step.shiftK === shiftK);
const whole = (value: number): string => formatNumber(value, { decimals: value < 10 ? 1 : 0 });

/** The page's one sentence: what a kelvin more would change on both sides. */
export function sidesLede(sides: BothSides, unit: "C" | "F"): string {
  const [now, more] = sides ? [at(sides, 0), at(sides, 1)] : [];
  if (!now || !more) return "Fewer people too cold are more people too warm: both are shown, always together.";
  return `With zone air ${formatTemperatureDifference(1, unit).text} warmer in the cooling season, reports of too cold go from ${whole(now.expected.tooCold.median)} to ${whole(more.expected.tooCold.median)} a year, and those of too warm from ${whole(now.expected.tooWarm.median)} to ${whole(more.expected.tooWarm.median)}.`;
}

export type SideLine = { shiftK: number } & Record<
  "key" | "shift" | "mean" | "tooCold" | "tooColdRange" | "tooWarm" | "tooWarmRange" | "warmer" | "cooler",
  string
>;

const percent = ({ median, low, high }: Step["warmer"]): string =>
  `${Math.round(100 * median)} % (${Math.round(100 * low)}-${Math.round(100 * high)})`;
const range = ({ low, high }: { low: number; high: number }): string => `${whole(low)}-${whole(high)}`;

export const shiftWords = (shiftK: number, unit: "C" | "F"): string =>
  shiftK === 0 ? "as it is" : `${shiftK > 0 ? "+" : ""}${formatTemperatureDifference(shiftK, unit).text}`;

/** Steps as the table shows them. */
export const sideLines = ({ steps }: Sides, unit: "C" | "F"): SideLine[] =>
  steps.map(({ shiftK, meanAirTempC, expected, warmer, cooler }) => ({
    shiftK,
    key: String(shiftK),
    shift: shiftWords(shiftK, unit),
    mean: formatTemperature(meanAirTempC, unit).text,
    tooCold: whole(expected.tooCold.median),
    tooColdRange: range(expected.tooCold),
    tooWarm: whole(expected.tooWarm.median),
    tooWarmRange: range(expected.tooWarm),
    warmer: percent(warmer),
    cooler: percent(cooler),
  }));

/** What the figures rest on, and what they leave out. */
export function recordWords({ record, deskHours, steps }: Sides, timeZone: string): string {
  const beyond = steps.filter(({ expected }) => expected.beyondVotesHours > 0.05 * deskHours);
  return [
    `They rest on ${record.personDays} person-days that wanted a change since ${formatLocal(record.fromUtcSeconds * 1000, timeZone, "date")} and ${formatNumber(deskHours, { decimals: 0 })} occupied desk-hours of the cooling season in the last ${record.yearDays} recorded days.`,
    record.leftOut > 0
      ? `${record.leftOut} reports are left out: no zone air is recorded for their moment, or no desks.`
      : "",
    record.without.length > 0 ? `Zones without desks or zone air: ${record.without.join(", ")}.` : "",
    beyond.length > 0
      ? "Steps that bring more than a twentieth of the hours beyond 20 to 27 °C draw the votes' lines out."
      : "",
  ]
    .filter(Boolean)
    .join(" ");
}

export type ShareLine = Record<"key" | "air" | "warmer" | "cooler" | "hours", string>;

/** The picture's numbers as its table shows them. */
export const shareLines = (points: readonly SharesAt[], unit: "C" | "F"): ShareLine[] =>
  points.map(({ airTempC, warmer, cooler, deskHours }) => ({
    key: String(airTempC),
    air: formatTemperature(airTempC, unit).text,
    warmer: percent(warmer),
    cooler: percent(cooler),
    hours: formatNumber(deskHours, { decimals: 0 }),
  }));

/** What the picture shows, in one sentence. */
export function pictureLabel(points: readonly SharesAt[], unit: "C" | "F"): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return "";
  const from = `${formatTemperature(first.airTempC, unit).text} to ${formatTemperature(last.airTempC, unit).text}`;
  const share = ({ median }: SharesAt["warmer"]) => `${Math.round(100 * median)} %`;
  return `From ${from} zone air, the share who want it warmer goes from ${share(first.warmer)} to ${share(last.warmer)} and the share who want it cooler from ${share(first.cooler)} to ${share(last.cooler)}; behind, the occupied desk-hours at each degree.`;
}

export const FIGURE_WORDS: Readonly<Record<SideFigure, string>> = {
  "too-cold": "Too cold",
  "too-warm": "Too warm",
  "want-warmer": "Want it warmer",
  "want-cooler": "Want it cooler",
};

/** Address of a figure's working: the step in tenths of a kelvin and the figure. */
export const workingPath = (here: string, shiftK: number, figure: SideFigure): string =>
  `${here}/working/${Math.round(shiftK * 10)}-${figure}`;

/** Which figure an address names: its step of `steps` and its name; null for an address that names none. */
export function figureOf(id: string, steps: readonly Step[]): { index: number; figure: SideFigure } | null {
  const [, tenths, name] = /^(-?\d+)-([a-z-]+)$/.exec(id) ?? [];
  const figure = SIDE_FIGURES.find((each) => each === name);
  const index = steps.findIndex(({ shiftK }) => Math.round(shiftK * 10) === Number(tenths));
  return figure && index >= 0 ? { index, figure } : null;
}

export type AirLine = Record<"key" | "zone" | "mean" | "spread" | "swing", string>;

/** Zones by how far their air spreads, the widest first. */
export function airLines({ record }: Sides, unit: "C" | "F"): AirLine[] {
  return record.zones
    .flatMap(({ zoneId, code, summerAir }) => (summerAir ? [{ zoneId, code, summerAir }] : []))
    .sort((a, b) => b.summerAir.deviationK - a.summerAir.deviationK)
    .map(({ zoneId, code, summerAir }) => ({
      key: String(zoneId),
      zone: code,
      mean: formatTemperature(summerAir.meanC, unit).text,
      spread: formatTemperatureDifference(summerAir.deviationK, unit, 2).text,
      swing: formatTemperatureDifference(summerAir.rateDeviationKPerHour, unit, 2).text,
    }));
}
