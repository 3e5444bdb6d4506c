import { type LocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { zoneTable } from "@/lib/time/zone-table";

/** The one reading of the clock on the server: epoch milliseconds for a use-case's context. */
export const now = (): number => Date.now();

/** Today by a zone's calendar, as `YYYY-MM-DD`. */
export function today(timeZone: string): LocalDate {
  return localDateFromDayNumber(Math.floor(zoneTable(timeZone).localFromUtc(Math.floor(now() / 1000)) / 86400));
}
