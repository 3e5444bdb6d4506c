import { civilFromDayNumber, dayNumber, dayNumberFromLocalDate, isoWeekday } from "@/lib/time/civil-date";
import { type OccupiedHours, occupiedMask } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";

export const DEMO_TIME_ZONE = "America/New_York";
export const STEP_SECONDS = 900;

/** Instants of a simulation: step `i` begins at `startUtcSeconds + i * STEP_SECONDS`. */
export type DemoSpan = { startUtcSeconds: number; count: number };

/** Days without occupied hours in the demo year. */
export const DEMO_HOLIDAYS: readonly { date: string; name: string }[] = [
  { date: "2025-11-27", name: "Thanksgiving Day" },
  { date: "2025-11-28", name: "Day after Thanksgiving" },
  { date: "2025-12-24", name: "Office closed" },
  { date: "2025-12-25", name: "Christmas Day" },
  { date: "2026-01-01", name: "New Year's Day" },
  { date: "2026-01-19", name: "Winter holiday" },
  { date: "2026-05-25", name: "Memorial Day" },
  { date: "2026-06-19", name: "Juneteenth" },
  { date: "2026-07-03", name: "Independence Day (observed)" },
  { date: "2026-09-07", name: "Labor Day" },
];

export const OCCUPIED_FROM_MINUTE = 7 * 60;
export const OCCUPIED_TO_MINUTE = 18 * 60;
const SYSTEM_FROM_MINUTE = 5 * 60;

const workdays = (startMinute: number, endMinute: number): OccupiedHours => ({
  weekdays: Object.fromEntries([1, 2, 3, 4, 5].map((weekday) => [weekday, [{ startMinute, endMinute }]])),
  holidays: DEMO_HOLIDAYS.map(({ date }) => date),
});

/** Monday to Friday 07:00-18:00. */
export const DEMO_OCCUPIED_HOURS = workdays(OCCUPIED_FROM_MINUTE, OCCUPIED_TO_MINUTE);

/** UTC second at which a local date of the demo building begins. */
export function startOfLocalDate(date: string): number {
  const day = dayNumberFromLocalDate(date);
  if (day === null) throw new RangeError(`${date} is not a date`);
  const start = zoneTable(DEMO_TIME_ZONE).utcFromLocal(day * 86400);
  if (start.status !== "unique") throw new RangeError(`${date} has no single midnight`);
  return start.utcSeconds;
}

/** Whole local days from a date on. The demo year is `demoSpan("2025-10-01", "2026-10-01")`. */
export function demoSpan(fromDate: string, toDate: string): DemoSpan {
  const startUtcSeconds = startOfLocalDate(fromDate);
  return { startUtcSeconds, count: (startOfLocalDate(toDate) - startUtcSeconds) / STEP_SECONDS };
}

export const DEMO_YEAR = demoSpan("2025-10-01", "2026-10-01");

/** What the wall clock says of each step. */
export type DemoCalendar = {
  span: DemoSpan;
  occupied: Uint8Array;
  /** 1 while the air handler runs for the day: two hours before the occupied hours until their end. */
  systemOn: Uint8Array;
  lightsOn: Uint8Array;
  minuteOfDay: Int16Array;
  /** Local day of each step, and the ISO weekday of it. */
  day: Int32Array;
  weekday: Uint8Array;
  /** Month 1-12 of each step. */
  month: Uint8Array;
};

export function demoCalendar(span: DemoSpan): DemoCalendar {
  const zone = zoneTable(DEMO_TIME_ZONE);
  const grid = { ...span, stepSeconds: STEP_SECONDS };
  const local = Float64Array.from({ length: span.count }, (_, i) =>
    zone.localFromUtc(span.startUtcSeconds + i * STEP_SECONDS),
  );
  const day = Int32Array.from(local, (seconds) => Math.floor(seconds / 86400));
  return {
    span,
    occupied: occupiedMask(grid, DEMO_OCCUPIED_HOURS, zone),
    systemOn: occupiedMask(grid, workdays(SYSTEM_FROM_MINUTE, OCCUPIED_TO_MINUTE), zone),
    lightsOn: occupiedMask(grid, workdays(OCCUPIED_FROM_MINUTE - 30, OCCUPIED_TO_MINUTE + 60), zone),
    minuteOfDay: Int16Array.from(local, (seconds, i) => Math.floor((seconds - (day[i] as number) * 86400) / 60)),
    day,
    weekday: Uint8Array.from(day, isoWeekday),
    month: Uint8Array.from(day, (each) => civilFromDayNumber(each).month),
  };
}

/** Hour of the typical year (0 = first of January 00:00, standard time) at an instant; 29 February does not occur. */
export function hourOfYear(utcSeconds: number, utcOffsetHours: number): number {
  const standard = utcSeconds + utcOffsetHours * 3600;
  const { year } = civilFromDayNumber(Math.floor(standard / 86400));
  return (standard - dayNumber(year, 1, 1) * 86400) / 3600;
}
