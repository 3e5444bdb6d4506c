import { quantiles } from "@/lib/statistics/quantile";
import { GAP_STEPS } from "../resample";
import { type PointSeries, usualStepSeconds } from "../samples";
import { hoursOf, type Stretch } from "./quality-point";

/** A change-of-value point that is silent for this long may have stopped [s]: longer than any holiday week. Judgement, no source. */
const LEAST_SILENCE_SECONDS = 7 * 86_400;
/** ... and for this many times its own usual long silence. Judgement, no source. */
const SILENCE_FACTOR = 3;

/**
 * Stretches of a point's record without samples, longest first.
 *
 * An `interval` point has a gap where the next sample is more than 1.5 usual steps away, from the end of the last
 * sample's own step. A `change-of-value` point is silent whenever nothing changes, so only a silence of a week and of
 * three times its 95 % silence is named; its last value is carried through it all the same.
 */
export function sampleGaps({ samples: { ts }, sampling }: PointSeries): Stretch[] {
  const usual = usualStepSeconds(ts);
  if (usual === null) return [];
  const gaps: Stretch[] = [];
  const reach = sampling === "interval" ? usual * GAP_STEPS : longSilence(ts);
  const ownStep = sampling === "interval" ? usual : 0;
  for (let i = 1; i < ts.length; i++) {
    const last = ts[i - 1] as number;
    const next = ts[i] as number;
    if (next - last > reach) gaps.push({ fromUtcSeconds: last + ownStep, toUtcSeconds: next });
  }
  return gaps.sort((a, b) => hoursOf(b) - hoursOf(a));
}

function longSilence(ts: Float64Array): number {
  const steps = ts.subarray(1).map((at, i) => at - (ts[i] as number));
  const [usualLong = 0] = quantiles(steps, [0.95]);
  return Math.max(LEAST_SILENCE_SECONDS, SILENCE_FACTOR * usualLong);
}
