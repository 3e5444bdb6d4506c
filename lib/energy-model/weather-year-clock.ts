import { civilFromDayNumber, dayNumber } from "@/lib/time/civil-date";
import { zoneTable } from "@/lib/time/zone-table";

/** Month (1 to 12) and hour of the day (0 to 23) by the building's wall clock in which each hour of a weather year begins. */
export type WeatherYearClock = { month: Uint8Array; hour: Uint8Array };

const HOURS = 8760;

/** Wall clock of a weather year without 29 February; row 0 is the hour from 00:00 on 1 January in the station's standard time. */
export function weatherYearClock(input: {
  timeZone: string;
  utcOffsetHours: number;
  calendarYear: number;
}): WeatherYearClock {
  const zone = zoneTable(input.timeZone);
  const [month, hour] = [new Uint8Array(HOURS), new Uint8Array(HOURS)];
  const first = dayNumber(input.calendarYear, 1, 1);
  let row = 0;
  for (let day = first; row < HOURS; day++) {
    const civil = civilFromDayNumber(day);
    if (civil.month === 2 && civil.day === 29) continue;
    for (let each = 0; each < 24; each++) {
      const local = zone.localFromUtc(day * 86_400 + (each - input.utcOffsetHours) * 3600);
      const localDay = Math.floor(local / 86_400);
      month[row] = civilFromDayNumber(localDay).month;
      hour[row] = Math.floor((local - localDay * 86_400) / 3600);
      row++;
    }
  }
  return { month, hour };
}
