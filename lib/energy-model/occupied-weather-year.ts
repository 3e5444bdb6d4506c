import { dayNumber, isoWeekday } from "@/lib/time/civil-date";
import { type DayInterval, holidayDays, type OccupiedHours } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";

const HOURS = 8760;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export type OccupiedWeatherYear = {
  /** Occupied part, 0 to 1, of each hour of the weather year. */
  occupied: Float64Array;
  /** The calendar year whose weekdays, holidays and clock changes were laid on it. */
  calendarYear: number;
  totalHours: number;
  /** True in a leap year: 29 February has no weather and is left out. */
  leapDayLeftOut: boolean;
};

/**
 * Lays a building's occupied hours on a weather year. A typical year is put together from months of different years
 * and has no weekdays of its own, so the calendar of one stated year is laid on it. Row 0 is the hour ending 01:00 on
 * 1 January in the station's standard time, `utcOffsetHours` east of UTC; occupied hours are judged by the building's
 * wall clock, with its daylight saving time. Intervals that begin or end inside an hour count by their part of it.
 */
export function occupiedWeatherYear(input: {
  hours: OccupiedHours;
  timeZone: string;
  utcOffsetHours: number;
  calendarYear: number;
}): OccupiedWeatherYear {
  const zone = zoneTable(input.timeZone);
  const holidays = holidayDays(input.hours);
  const occupied = new Float64Array(HOURS);
  let totalHours = 0;
  let row = 0;
  for (let month = 1; month <= 12; month++) {
    for (let day = 1; day <= (DAYS_IN_MONTH[month - 1] as number); day++) {
      const midnightUtc = dayNumber(input.calendarYear, month, day) * 86400 - input.utcOffsetHours * 3600;
      for (let hour = 0; hour < 24; hour++) {
        const local = zone.localFromUtc(midnightUtc + hour * 3600);
        const part = occupiedMinutes(input.hours, local / 60, holidays) / 60;
        occupied[row++] = part;
        totalHours += part;
      }
    }
  }
  const february = dayNumber(input.calendarYear, 3, 1) - dayNumber(input.calendarYear, 2, 1);
  return { occupied, calendarYear: input.calendarYear, totalHours, leapDayLeftOut: february === 29 };
}

/** Occupied minutes of the hour that begins at a wall-clock minute; it may run into the next day (half-hour zones). */
function occupiedMinutes(hours: OccupiedHours, startMinute: number, holidays: ReadonlySet<number>): number {
  const firstDay = Math.floor(startMinute / 1440);
  let minutes = 0;
  for (const day of [firstDay, firstDay + 1]) {
    if (holidays.has(day)) continue;
    const from = startMinute - day * 1440;
    for (const each of hours.weekdays[isoWeekday(day)] ?? []) minutes += overlap(each, from, from + 60);
  }
  return minutes;
}

const overlap = (interval: DayInterval, from: number, to: number): number =>
  Math.max(0, Math.min(interval.endMinute, to) - Math.max(interval.startMinute, from));
