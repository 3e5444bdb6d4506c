import type { PointKind } from "../point-kind";
import type { ZoneGrids } from "../zone-grids";
import { type DailyProfile, dailyProfile, type LocalClock } from "./daily-profile";

/** The trend of a zone that shows its time schedule, interval by interval, with its mean day. */
export type ScheduleTrend = { kind: PointKind; values: Float64Array; profile: DailyProfile };

/** A box runs when its airflow or damper is above this share of its largest. Judgement, no source. */
const RUNNING_SHARE = 0.05;
/** Of a mean day that shows a schedule this share at least lies between its busiest and its idlest quarter. Judgement, no source. */
const LEAST_SWING = 0.3;

/**
 * The trend by which a zone's time schedule shows: whether air moves, else whether the damper is open, else the cooling setpoint;
 * the first whose mean day is not flat. Null where none has one. Running or not shifts with the clock alone, how much with the weather.
 */
export function scheduleTrend(
  grids: ZoneGrids,
  of: { clock: LocalClock; days: { firstDay: number; count: number }; countsDay: (day: number) => boolean },
): ScheduleTrend | null {
  const candidates: [PointKind, Float64Array | null][] = [
    ["airflow", grids.airflowM3ps && running(grids.airflowM3ps)],
    ["damper-position", grids.damperPct && running(grids.damperPct)],
    ["cooling-setpoint", grids.coolingSetpointC],
  ];
  for (const [kind, values] of candidates) {
    if (!values) continue;
    const profile = dailyProfile(values, of.clock, {
      fromDay: of.days.firstDay,
      toDay: of.days.firstDay + of.days.count,
      countsDay: of.countsDay,
    });
    const known = profile.values.filter((each) => !Number.isNaN(each));
    if (known.length > 0 && Math.max(...known) - Math.min(...known) >= LEAST_SWING) return { kind, values, profile };
  }
  return null;
}

/** 1 where a trend is above a small share of its largest value, 0 below, NaN where it is not recorded. */
function running(values: Float64Array): Float64Array {
  let largest = 0;
  for (const each of values) if (each > largest) largest = each;
  return values.map((each) => (Number.isNaN(each) ? each : each > RUNNING_SHARE * largest ? 1 : 0));
}
