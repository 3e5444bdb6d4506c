import { type PointSeries, usualStepSeconds } from "../samples";
import { hoursOf, type Stretch } from "./quality-point";

/** A sensor sampled at intervals that shows one value for this long is suspect [h]. Judgement, no source. */
export const STUCK_INTERVAL_HOURS = 24;
/** The same of a change-of-value sensor, which tells nothing within its own step of change [h]. Judgement, no source. */
export const STUCK_CHANGE_HOURS = 72;
/** The other sensors must have moved by this much meanwhile [K], and by three of the sensor's own steps. Judgement, no source. */
export const OTHERS_MOVED_K = 0.5;
const OWN_STEPS = 3;
/** A gap of more than this many usual steps ends a run. Judgement, no source. */
const GAP_ENDS_RUN_STEPS = 4;

export type StuckRun = Stretch & { value: number };

/**
 * Stretches in which a sensor showed one value for 24 h (72 h on change of value) or more, longest first. Only for points
 * that never rest: temperatures, not valves, dampers, setpoints or an airflow of zero. Whether it is stuck depends on the others.
 */
export function unchangedRuns({ samples: { ts, v, decimals }, sampling }: PointSeries): StuckRun[] {
  const least = sampling === "interval" ? STUCK_INTERVAL_HOURS : STUCK_CHANGE_HOURS;
  const usual = usualStepSeconds(ts) ?? 0;
  // Beyond a gap of an interval point the sensor may have moved and come back.
  const reach = sampling === "interval" ? GAP_ENDS_RUN_STEPS * usual : Number.POSITIVE_INFINITY;
  const ownStep = sampling === "interval" ? usual : 0;
  const runs: StuckRun[] = [];
  let from = 0;
  for (let i = 1; i <= ts.length; i++) {
    if (i < ts.length && v[i] === v[from] && (ts[i] as number) - (ts[i - 1] as number) <= reach) continue;
    // A value on change holds until the one that differs; the last of a record only as long as it was repeated.
    const until = sampling === "change-of-value" && i < ts.length ? (ts[i] as number) : (ts[i - 1] as number) + ownStep;
    const run = {
      fromUtcSeconds: ts[from] as number,
      toUtcSeconds: until,
      value: (v[from] as number) / 10 ** decimals,
    };
    if (hoursOf(run) >= least) runs.push(run);
    from = i;
  }
  return runs.sort((a, b) => hoursOf(b) - hoursOf(a));
}

/** Smallest difference between neighbouring samples that is not zero, in the stored unit; null when all are alike. */
export function smallestStep({ samples: { v, decimals } }: PointSeries): number | null {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < v.length; i++) {
    const step = Math.abs((v[i] as number) - (v[i - 1] as number));
    if (step > 0 && step < least) least = step;
  }
  return Number.isFinite(least) ? least / 10 ** decimals : null;
}

/**
 * Whether the other sensors moved during a run: the median of their own ranges is at least 0.5 K and three steps of the
 * sensor looked at. Null without any other that was recorded then.
 */
export function othersMoved(rangesOfOthers: readonly number[], ownStepK: number | null): boolean | null {
  if (rangesOfOthers.length === 0) return null;
  const ascending = [...rangesOfOthers].sort((a, b) => a - b);
  const median = ascending[ascending.length >> 1] as number;
  return median >= Math.max(OTHERS_MOVED_K, OWN_STEPS * (ownStepK ?? 0));
}
