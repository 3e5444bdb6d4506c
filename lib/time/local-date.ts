import { type LocalDate, localDateFromDayNumber } from "./civil-date";
import { zoneTable } from "./zone-table";

/** Calendar date of an instant (epoch milliseconds) on a zone's wall clock. */
export function localDateAt(msEpoch: number, timeZone: string): LocalDate {
  return localDateFromDayNumber(Math.floor(zoneTable(timeZone).localFromUtc(Math.floor(msEpoch / 1000)) / 86400));
}
