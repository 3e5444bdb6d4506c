import { isoWeekday } from "@/lib/time/civil-date";
import type { ZoneTable } from "@/lib/time/zone-table";
import type { Grid } from "./grid";

/** Hours of a week, from Monday 00:00 by the wall clock: hour `(isoWeekday - 1) * 24 + hourOfDay`. */
export const HOURS_A_WEEK = 168;

/** Wall-clock hour of the week (0-167) in which each interval of a grid starts. Made once a building. */
export function localWeekHours(grid: Grid, zone: ZoneTable): Uint8Array {
  const hours = new Uint8Array(grid.count);
  for (let i = 0; i < grid.count; i++) {
    const local = zone.localFromUtc(grid.startUtcSeconds + i * grid.stepSeconds);
    const day = Math.floor(local / 86400);
    hours[i] = (isoWeekday(day) - 1) * 24 + Math.floor((local - day * 86400) / 3600);
  }
  return hours;
}
