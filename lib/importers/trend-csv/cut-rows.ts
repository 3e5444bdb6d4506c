import type { ZoneTable } from "@/lib/time/zone-table";
import type { Clock } from "./read-table";
import { READ } from "./stamp-column";

/**
 * How many rows of a part that is not the last can be read on their own. Rows without a stamp at its end belong to what
 * follows (totals, the heading of another table), and the hour that clocks repeat has to be seen whole: 0 when it is not.
 */
export function rowsToTake(count: number, clocks: readonly Clock[], zone: ZoneTable): number {
  const isRead = (row: number): boolean => clocks.some(({ stamps }) => stamps.status[row] === READ);
  const isInRepeatedHour = (row: number): boolean =>
    clocks.some(
      ({ stamps, local }) =>
        stamps.status[row] === READ &&
        Number.isNaN(stamps.offset[row] as number) &&
        zone.utcFromLocal(local[row] as number).status === "repeated",
    );
  let end = count;
  while (end > 0 && !isRead(end - 1)) end--;
  if (end === 0) return count;
  let take = end;
  while (take > 0 && (!isRead(take - 1) || isInRepeatedHour(take - 1))) take--;
  return take;
}
