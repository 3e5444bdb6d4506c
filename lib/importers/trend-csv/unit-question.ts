import { nameWords } from "./name-words";
import type { KindProposal } from "./propose-kind";
import { FILE_UNITS, type FileUnit, type TrendAnswers } from "./trend-file";

/**
 * Units that a point without one may have, by what its name says it is; null when it needs none because it is not kept.
 * Kelvin, which few systems write, only where the values may be so.
 */
export function unitChoices(
  name: string,
  proposal: KindProposal,
  values: Float64Array = new Float64Array(0),
): string[] | null {
  const choices = choicesByName(name, proposal);
  const isTemperature = choices?.includes("degF") && !choices.includes("percent");
  return choices && isTemperature && values.length > 0 && isAirInKelvin(median(values))
    ? choices.toSpliced(-1, 0, "kelvin")
    : choices;
}

/** Air from -23 to 57 °C. */
const isAirInKelvin = (value: number): boolean => value >= 250 && value <= 330;

function choicesByName(name: string, proposal: KindProposal): string[] | null {
  const words = nameWords(name);
  if (words.some((word) => ["rh", "humidity", "feuchte"].includes(word)))
    return proposal.skip ? null : ["percentRH", "other"];
  if (proposal.skip) return null;
  switch (proposal.kind) {
    case "airflow":
    case "airflow-setpoint":
      return ["cfm", "m3PerHour", "litrePerSecond", "other"];
    case "damper-position":
    case "reheat-valve":
    case "occupancy":
    case "cooling-stage":
      return ["percent", "other"];
    case "meter-power":
      return ["kW", "W", "other"];
    case "meter-energy":
      return ["kWh", "other"];
    case null:
      return words.some((word) => /^(?:t|temp|tmp|temperature|temperatur)$/.test(word))
        ? ["degF", "degC", "other"]
        : ["degF", "degC", "percent", "kW", "kWh", "other"];
    default:
      return ["degF", "degC", "other"];
  }
}

/** The answer for one point, when there is one that its question offers. `other` answers without a unit. */
export function answeredUnit(
  name: string,
  choices: readonly string[] | null,
  answers: TrendAnswers,
): { unit: FileUnit | null } | null {
  const own = answers.units?.[name];
  const word = own ?? (choices?.includes(answers.unit ?? "") ? answers.unit : undefined);
  if (word === undefined) return null;
  if (word === "other") return { unit: null };
  const unit = FILE_UNITS.find((known) => known === word);
  return unit ? { unit } : null;
}

/** Median, without changing its argument. */
function median(values: Float64Array): number {
  return values.slice().sort()[values.length >> 1] as number;
}

/**
 * A unit proposed from the values, never from the country: indoors 50 to 95 can only be °F, 10 to 35 only °C and 250 to 330
 * only kelvin.
 * Null when the values fit neither, or both.
 */
export function proposeUnit(choices: readonly string[], series: readonly Float64Array[]): string | undefined {
  const medians = series.filter((values) => values.length > 0).map(median);
  if (medians.length === 0) return undefined;
  if (choices.includes("degF")) {
    const fahrenheit = medians.filter((value) => value >= 50 && value <= 95).length;
    const celsius = medians.filter((value) => value >= 10 && value <= 35).length;
    if (fahrenheit > celsius && fahrenheit * 2 > medians.length) return "degF";
    if (celsius > fahrenheit && celsius * 2 > medians.length) return "degC";
    const kelvin = choices.includes("kelvin") ? medians.filter(isAirInKelvin).length : 0;
    return kelvin * 2 > medians.length ? "kelvin" : undefined;
  }
  if (choices.includes("percent") && medians.every((value) => value >= 0 && value <= 100)) return "percent";
  if (choices.includes("percentRH") && medians.every((value) => value > 1 && value <= 100)) return "percentRH";
  return undefined;
}
