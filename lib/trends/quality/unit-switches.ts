import { median } from "@/lib/statistics/quantile";
import { celsiusFromFahrenheit } from "@/lib/units/temperature";

/** Days looked at on either side of a step, and how many of them must be recorded. Judgement, no source. */
const DAYS_EACH_SIDE = 3;
const LEAST_DAYS = 2;
/** A step smaller than this is weather or a setpoint [K]. Judgement, no source. */
const LEAST_STEP_K = 12;
/** How near the new level must come to the old one in the other unit [K]. Judgement, no source. */
const NEAR_K = 2.5;

export type UnitSwitch = { day: number; beforeC: number; afterC: number; to: "read-as-fahrenheit" | "not-converted" };

/**
 * Days on which an indoor temperature goes over to another unit: its level (daily means in °C, null where not known) steps
 * to what the same temperature is when °C are taken for °F and converted (22 °C becomes -5.6), or when °F are taken for
 * °C (22 °C becomes 71.6: a step of about 50), or back. The day itself may hold both.
 */
export function unitSwitches(dailyMeansC: readonly (number | null)[]): UnitSwitch[] {
  const found: UnitSwitch[] = [];
  const level = (from: number, to: number): number | null => {
    const known = dailyMeansC.slice(Math.max(0, from), Math.max(0, to)).filter((each) => each !== null);
    return known.length >= LEAST_DAYS ? median(known) : null;
  };
  for (let day = LEAST_DAYS; day < dailyMeansC.length; day++) {
    const beforeC = level(day - DAYS_EACH_SIDE, day);
    const afterC = level(day + 1, day + 1 + DAYS_EACH_SIDE);
    if (beforeC === null || afterC === null || Math.abs(afterC - beforeC) < LEAST_STEP_K) continue;
    const lower = Math.min(beforeC, afterC);
    const upper = Math.max(beforeC, afterC);
    if (Math.abs(celsiusFromFahrenheit(upper) - lower) > NEAR_K) continue;
    const first = firstOff(dailyMeansC, day - DAYS_EACH_SIDE, beforeC, Math.abs(afterC - beforeC) / 4) ?? day;
    // Of the two levels the one that can be a room's is right.
    const to = Math.abs(upper - 22) < Math.abs(lower - 22) ? "read-as-fahrenheit" : "not-converted";
    found.push({ day: first, beforeC, afterC, to });
    day = first + DAYS_EACH_SIDE;
  }
  return found;
}

/** The first day from `from` on that lies further off a level than allowed. */
function firstOff(days: readonly (number | null)[], from: number, levelC: number, allowedK: number): number | null {
  for (let day = Math.max(0, from); day < days.length; day++) {
    const mean = days[day] ?? null;
    if (mean !== null && Math.abs(mean - levelC) > allowedK) return day;
  }
  return null;
}
