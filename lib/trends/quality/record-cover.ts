import { HOLD_AFTER_LAST_SECONDS } from "../resample";
import { type PointSeries, usualStepSeconds } from "../samples";
import { overlapSeconds, type Stretch } from "./quality-point";

/** A record that covers less than this of another is short. Judgement, no source. */
export const SHORT_RECORD = 0.9;

/** From the first sample of a point to the end of the last one's step (a day for change of value); null without samples. */
export function recordOf({ samples: { ts }, sampling }: PointSeries): Stretch | null {
  if (ts.length === 0) return null;
  const reach = sampling === "interval" ? (usualStepSeconds(ts) ?? 0) : HOLD_AFTER_LAST_SECONDS;
  return { fromUtcSeconds: ts[0] as number, toUtcSeconds: (ts[ts.length - 1] as number) + reach };
}

/** How much of a wanted stretch a record covers, from end to end, whatever gaps it has. */
export function coverOf(record: Stretch, wanted: Stretch): { share: number; coveredDays: number; ofDays: number } {
  const length = wanted.toUtcSeconds - wanted.fromUtcSeconds;
  const covered = overlapSeconds(record, wanted);
  return { share: length > 0 ? covered / length : 1, coveredDays: covered / 86_400, ofDays: length / 86_400 };
}
