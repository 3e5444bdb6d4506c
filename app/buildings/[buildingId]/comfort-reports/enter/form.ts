import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { localDateAt } from "@/lib/time/local-date";
import { zoneTable } from "@/lib/time/zone-table";

/**
 * A date and a time of day of a building as epoch milliseconds: null (now) where the time is open and the date is today or
 * open, noon of an earlier day; NaN for what is no date or time, which the use-case refuses.
 */
export function momentOfForm(
  date: string,
  time: string,
  { timeZone, nowMs }: { timeZone: string; nowMs: number },
): number | null {
  const today = localDateAt(nowMs, timeZone);
  if (time === "" && (date === "" || date === today)) return null;
  const day = dayNumberFromLocalDate(date || today);
  const match = /^(\d{2}):(\d{2})/.exec(time || "12:00");
  if (day === null || !match) return Number.NaN;
  const local = zoneTable(timeZone).utcFromLocal(day * 86_400 + Number(match[1]) * 3600 + Number(match[2]) * 60);
  if (local.status === "unique") return local.utcSeconds * 1000;
  return (local.status === "repeated" ? local.firstUtcSeconds : local.shiftedUtcSeconds) * 1000;
}
