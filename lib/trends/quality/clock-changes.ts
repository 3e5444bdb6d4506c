import { type DailyProfile, dailyProfile, type LocalClock } from "./daily-profile";
import { isShifted, type ProfileLag, profileLag } from "./profile-lag";

/** Days compared on either side of a clock change, and how many of them must be recorded. Judgement, no source. */
const DAYS_EACH_SIDE = 21;
const LEAST_DAYS = 5;

export type OffsetChange = { atUtcSeconds: number; bySeconds: number };
export type FollowedChange = OffsetChange & { lag: ProfileLag };

/**
 * Clock changes at which a point that runs by a time schedule (airflow, damper, setpoint) began to run an hour off: its
 * daily profile by the wall clock steps by the size of the change, to a quarter of an hour. A controller or logger whose clock does
 * not follow the change, or a file read with the wrong rule, looks like this. The sun moves too slowly to.
 */
export function shiftsAtClockChanges(
  values: Float64Array,
  clock: LocalClock,
  changes: readonly OffsetChange[],
  of: { dayAt: (utcSeconds: number) => number; countsDay: (day: number) => boolean },
): FollowedChange[] {
  return changes.flatMap((change) => {
    const day = of.dayAt(change.atUtcSeconds);
    const profile = (fromDay: number, toDay: number): DailyProfile =>
      dailyProfile(values, clock, { fromDay, toDay, countsDay: of.countsDay });
    const before = profile(day - DAYS_EACH_SIDE, day);
    const after = profile(day + 1, day + 1 + DAYS_EACH_SIDE);
    if (before.days < LEAST_DAYS || after.days < LEAST_DAYS) return [];
    const lag = profileLag(before.values, after.values);
    if (!lag || !isShifted(lag, 15)) return [];
    return Math.abs(Math.abs(lag.minutes) * 60 - Math.abs(change.bySeconds)) <= 900 ? [{ ...change, lag }] : [];
  });
}
