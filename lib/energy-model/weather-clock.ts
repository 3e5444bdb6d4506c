import { dayNumber, isoWeekday } from "@/lib/time/civil-date";
import { zoneTable } from "@/lib/time/zone-table";

const HOURS = 8760;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Wall-clock month (1-12), ISO weekday (1-7) and minute of the day at the start of each hour of a weather year. */
export type WeatherClock = { month: Uint8Array; weekday: Uint8Array; minute: Uint16Array };

/** The building's clock over a weather year, on which the calendar of one year is laid as for its occupied hours. */
export function weatherClock(of: { timeZone: string; utcOffsetHours: number; calendarYear: number }): WeatherClock {
  const zone = zoneTable(of.timeZone);
  const clock = { month: new Uint8Array(HOURS), weekday: new Uint8Array(HOURS), minute: new Uint16Array(HOURS) };
  let row = 0;
  DAYS_IN_MONTH.forEach((days, monthIndex) => {
    for (let day = 1; day <= days; day++) {
      const midnightUtc = dayNumber(of.calendarYear, monthIndex + 1, day) * 86400 - of.utcOffsetHours * 3600;
      for (let hour = 0; hour < 24; hour++, row++) {
        const localMinute = Math.floor(zone.localFromUtc(midnightUtc + hour * 3600) / 60);
        const localDay = Math.floor(localMinute / 1440);
        // The month of the weather, not of the clock: the two differ for an hour a month at most.
        clock.month[row] = monthIndex + 1;
        clock.weekday[row] = isoWeekday(localDay);
        clock.minute[row] = localMinute - localDay * 1440;
      }
    }
  });
  return clock;
}
