import type { KindProposal } from "./propose-kind";
import type { FileUnit } from "./trend-file";

const list = (text: string): readonly string[] => text.split(" ");
const METER = list("meter mtr mains");
const ENERGY = list("kwh energy consumption usage");
const POWER = list("kw power demand");
/** Words that may stand beside those of a meter without making it a part of a building. */
const WHOLE = list(
  "electric electrical electricity elec elect building bldg whole total main utility grid site interval import imported delivered avg average mean active real hourly daily min minute minutes",
);

/**
 * Proposes an electricity meter of the whole building: a name of nothing but words for a meter, its quantity and the
 * whole, such as `Main Meter`, `kW` or `Building Electricity kWh`. `Fan kW` and `Plug Meter` are parts, and `Gas Meter`
 * is another carrier: none of them is proposed. What its name leaves open the file's unit may say. Null for any other name.
 */
export function proposeMeter(words: readonly string[], unit: FileUnit | null = null): KindProposal | null {
  const letters = withUnits(words).filter((word) => !/^\d+$/.test(word));
  const has = (set: readonly string[]): boolean => letters.some((word) => set.includes(word));
  const says = has(METER) || has(ENERGY) || has(POWER) || letters.some((word) => word.startsWith("electric"));
  const whole = letters.every((word) => [METER, ENERGY, POWER, WHOLE].some((set) => set.includes(word)));
  if (letters.length === 0 || !says || !whole) return null;
  if (has(ENERGY) || unit === "kWh")
    return {
      kind: "meter-energy",
      skip: false,
      confidence: "medium",
      reason: "an electricity meter's energy by its name",
    };
  if (has(POWER) || unit === "kW" || unit === "W")
    return {
      kind: "meter-power",
      skip: false,
      confidence: "medium",
      reason: "an electricity meter's power by its name",
    };
  return {
    kind: null,
    skip: false,
    confidence: "low",
    reason: "a meter, but the name does not say of what: choose power, energy of each interval, or leave it out",
  };
}

/** `kW` and `kWh` are split at their capital like any other name: put together again. */
const withUnits = (words: readonly string[]): string[] =>
  words.flatMap((word, i) => {
    if (word === "k" && /^wh?$/.test(words[i + 1] ?? "")) return [`k${words[i + 1]}`];
    return words[i - 1] === "k" && /^wh?$/.test(word) ? [] : [word];
  });
