import type { Counted } from "@/lib/statistics/rate-ratio";
import type { Term, Working } from "@/lib/working/working";
import type { WeatherDifference } from "./comparable-days";

type Compared = Extract<WeatherDifference, { status: "ok" }>;

/** The difference of days of like weather, after less before. */
export function differenceWorking(
  { before, after, difference, low, high, daysBefore, daysAfter, daysLeftOut }: Compared,
  { label, unit, confidence }: { label: string; unit: string; confidence: number },
): Working {
  const mean = (symbol: string, of: string, value: number, days: number): Term => ({
    symbol,
    label: of,
    value,
    unit,
    origin: "measured",
    source: `mean of ${days} occupied days`,
  });
  const ends = `${low.toPrecision(4)} to ${high.toPrecision(4)}`;
  return {
    formula: "d = x_a - x_b",
    terms: [
      mean("x_a", "after", after, daysAfter),
      mean("x_b", "before, in the weather of the days after", before, daysBefore),
    ],
    result: { symbol: "d", label: `change: ${label}`, value: difference, unit },
    notes: [
      "Days are compared within outdoor bins of 3 K that both windows have, each bin weighted by its days after.",
      `${Math.round(100 * confidence)} % interval ${ends} ${unit}: Student's on the spread within bins, with the days reduced to independent ones once. ${daysLeftOut} days without their like were left out.`,
    ],
  };
}

/** Two rates of reports by their counts. Null where the rate before is nought and there is no ratio. */
export function ratioWorking(label: string, before: Counted, after: Counted, ratio: number | null): Working | null {
  if (ratio === null) return null;
  const count = (symbol: string, of: string, value: number, unit: string): Term => ({
    symbol,
    label: of,
    value,
    unit,
    origin: "measured",
    source: unit === "reports" ? "comfort reports" : "desks times occupied days with zone air",
  });
  return {
    formula: "R = c_a / e_a / (c_b / e_b)",
    terms: [
      count("c_a", "after", after.events, "reports"),
      count("e_a", "exposure after", after.exposure, "desk-days"),
      count("c_b", "before", before.events, "reports"),
      count("e_b", "exposure before", before.exposure, "desk-days"),
    ],
    result: { symbol: "R", label: `ratio of rates, after over before: ${label.toLowerCase()}`, value: ratio, unit: "" },
    source: "exact conditional test of two Poisson rates (Przyborowski & Wilenski 1940; Clopper & Pearson 1934)",
  };
}
