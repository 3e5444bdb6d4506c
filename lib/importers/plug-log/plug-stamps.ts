import { dayNumber } from "@/lib/time/civil-date";
import type { ZoneTable } from "@/lib/time/zone-table";
import { type DateParts, readDate, readOffset, readTime, timeStart } from "../trend-csv/stamp-parts";
import type { DateOrder } from "./plug-quantity";

/** A stamp on the wall clock [local seconds], with the offset that it states itself or null. */
export type PlugStamp = { localSeconds: number; offsetSeconds: number | null };

const NO_WORDS = new Map<string, number>();

/** Reads stamps of one file; dates are remembered, since a day of them is written alike. */
export function stampReader(order: DateOrder | null): (text: string) => PlugStamp | null {
  const days = new Map<string, number | null>();
  const dayOf = (text: string): number | null => {
    const known = days.get(text);
    if (known !== undefined) return known;
    const parts = readDate(text);
    const day = parts && dayOfParts(parts, order);
    days.set(text, day);
    return day;
  };
  return (text) => {
    const at = timeStart(text);
    if (at < 1) return null;
    const day = dayOf(text.slice(0, at).replace(/[T,\s]+$/, ""));
    const time = readTime(text.slice(at));
    if (day === null || time === null) return null;
    const offsetSeconds = time.zoneText === "" ? null : readOffset(time.zoneText, NO_WORDS);
    if (time.zoneText !== "" && offsetSeconds === null) return null;
    return { localSeconds: day * 86_400 + time.seconds, offsetSeconds };
  };
}

function dayOfParts({ form, key }: DateParts, order: DateOrder | null): number | null {
  const [year, first, second] = [Math.floor(key / 10_000), Math.floor(key / 100) % 100, key % 100];
  const [month, day] = form !== "numeric" || order !== "dmy" ? [first, second] : [second, first];
  if (month > 12) return null;
  return dayNumber(year, month, day);
}

/** Whether stamps are numbers whose order must be known, and what the numbers above 12 say of it. */
export function dateOrderSeen(stamps: readonly string[]): { isNumeric: boolean; order: DateOrder | null } {
  let [isNumeric, dayFirst, monthFirst] = [false, false, false];
  for (const stamp of stamps) {
    const at = timeStart(stamp);
    const parts = at < 1 ? null : readDate(stamp.slice(0, at).replace(/[T,\s]+$/, ""));
    if (parts?.form !== "numeric") continue;
    isNumeric = true;
    if (Math.floor(parts.key / 100) % 100 > 12) dayFirst = true;
    if (parts.key % 100 > 12) monthFirst = true;
  }
  return { isNumeric, order: dayFirst === monthFirst ? null : dayFirst ? "dmy" : "mdy" };
}

/**
 * Instants of stamps in the order of the file [UTC seconds]. In the hour that is repeated when clocks go back the order
 * of the file decides; an hour that the clocks skip is read as if they had not.
 */
export function instantOf(stamp: PlugStamp, zone: ZoneTable, previousUtcSeconds: number): number {
  if (stamp.offsetSeconds !== null) return stamp.localSeconds - stamp.offsetSeconds;
  const local = zone.utcFromLocal(stamp.localSeconds);
  if (local.status === "unique") return local.utcSeconds;
  if (local.status === "missing") return local.shiftedUtcSeconds;
  return local.firstUtcSeconds >= previousUtcSeconds ? local.firstUtcSeconds : local.secondUtcSeconds;
}
