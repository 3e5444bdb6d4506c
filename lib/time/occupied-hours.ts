import { dayNumberFromLocalDate, isoWeekday, type LocalDate } from "./civil-date";
import type { ZoneTable } from "./zone-table";

/** A stretch of a day in minutes after local midnight; `endMinute` is not included and may be 1440. */
export type DayInterval = { startMinute: number; endMinute: number };

/** Occupied hours of a building: intervals per ISO weekday (1 Monday to 7 Sunday) and days without any. */
export type OccupiedHours = {
  weekdays: Readonly<Partial<Record<number, readonly DayInterval[]>>>;
  holidays: readonly LocalDate[];
};

/** Whether a wall-clock minute of a day is occupied. */
export function isOccupied(
  hours: OccupiedHours,
  day: number,
  minuteOfDay: number,
  holidays: ReadonlySet<number>,
): boolean {
  if (holidays.has(day)) return false;
  const intervals = hours.weekdays[isoWeekday(day)] ?? [];
  return intervals.some((each) => minuteOfDay >= each.startMinute && minuteOfDay < each.endMinute);
}

/** Holidays as day numbers, for quick look-up. */
export function holidayDays(hours: OccupiedHours): Set<number> {
  const days = new Set<number>();
  for (const date of hours.holidays) {
    const day = dayNumberFromLocalDate(date);
    if (day !== null) days.add(day);
  }
  return days;
}

/**
 * Occupied mask (1 or 0) of a regular grid of instants, judged by the building's wall clock, so that a day of
 * 23 or 25 hours is right. `startUtcSeconds` and `stepSeconds` describe the grid; an interval counts by its start.
 */
export function occupiedMask(
  grid: { startUtcSeconds: number; stepSeconds: number; count: number },
  hours: OccupiedHours,
  zone: ZoneTable,
): Uint8Array {
  const holidays = holidayDays(hours);
  const mask = new Uint8Array(grid.count);
  for (let i = 0; i < grid.count; i++) {
    const local = zone.localFromUtc(grid.startUtcSeconds + i * grid.stepSeconds);
    const day = Math.floor(local / 86400);
    mask[i] = isOccupied(hours, day, Math.floor((local - day * 86400) / 60), holidays) ? 1 : 0;
  }
  return mask;
}

/** Occupied hours of an ordinary year by the weekdays alone (no holidays, 365/7 weeks). */
export function weeklyOccupiedHours(hours: OccupiedHours): number {
  let minutes = 0;
  for (const intervals of Object.values(hours.weekdays)) {
    for (const each of intervals ?? []) minutes += each.endMinute - each.startMinute;
  }
  return minutes / 60;
}
