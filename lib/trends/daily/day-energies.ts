import type { LocalDays } from "@/lib/time/local-days";
import type { MeterKind } from "../point-kind";
import { type PointSeries, usualStepSeconds } from "../samples";
import { spanMeans } from "./span-means";

/**
 * Least share of a day's intervals that a meter must have given for the day's energy to be told; what is missing below
 * that is taken as the mean of the rest. Judgement, no source.
 */
export const LEAST_METER_COVERAGE = 0.9;

/** A reading as long as this is a whole day's, whatever the clocks did on it [s]. */
const WHOLE_DAY_SECONDS = 23 * 3600;

/**
 * Energy of each local day [kWh] by a meter of power (mean kW of an interval, times the hours of the day, of which there
 * are 23 to 25) or of energy (kWh of an interval, times the intervals of the day). NaN for a day that is not known.
 */
export function dayEnergies(kind: MeterKind, series: PointSeries, days: LocalDays): Float64Array {
  const stepSeconds = usualStepSeconds(series.samples.ts) ?? 0;
  const means = spanMeans(series, days.edges, { leastCoverage: LEAST_METER_COVERAGE });
  return Float64Array.from(means, ({ value }, k) => {
    if (value === null) return Number.NaN;
    const daySeconds = (days.edges[k + 1] as number) - (days.edges[k] as number);
    if (kind === "meter-power") return (value * daySeconds) / 3600;
    if (stepSeconds === 0) return Number.NaN;
    return stepSeconds >= WHOLE_DAY_SECONDS ? value : (value * daySeconds) / stepSeconds;
  });
}
