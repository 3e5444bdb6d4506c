import type { TrendSlice } from "./trend-store";

/** Samples of one point as the trend store hands them out: ascending UTC seconds, values scaled by 10^decimals. */
export type Samples = Pick<TrendSlice, "ts" | "v" | "decimals">;

/** `interval` samples each stand for a step; a `change-of-value` sample holds until the next. */
export type Sampling = "interval" | "change-of-value";

/** A point's samples with the way they were taken. */
export type PointSeries = { samples: Samples; sampling: Sampling };

const STEPS_LOOKED_AT = 1001;

/**
 * The usual time between samples [s]: the median of up to 1,001 steps spread evenly over the record (all of them in
 * a short one). Null with fewer than two samples.
 */
export function usualStepSeconds(ts: Float64Array): number | null {
  const steps = ts.length - 1;
  if (steps < 1) return null;
  const looked = Math.min(steps, STEPS_LOOKED_AT);
  const found = new Float64Array(looked);
  for (let k = 0; k < looked; k++) {
    const i = Math.floor((k * steps) / looked);
    found[k] = (ts[i + 1] as number) - (ts[i] as number);
  }
  found.sort();
  return found[looked >> 1] as number;
}
