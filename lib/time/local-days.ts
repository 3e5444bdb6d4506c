import { type LocalDate, localDateFromDayNumber } from "./civil-date";
import type { LocalInstant, ZoneTable } from "./zone-table";

/** Consecutive days by the wall clock of a zone: day `k` covers `[edges[k], edges[k + 1])` in UTC seconds. */
export type LocalDays = {
  /** Day number (days since 1970-01-01) of the first one. */
  firstDay: number;
  count: number;
  /** One more than days; a day lasts 23, 24 or 25 h (or what its zone made of it). */
  edges: Float64Array;
};

/** The local days that `[fromUtcSeconds, toUtcSeconds)` touches, whole; none for an empty span. */
export function localDaysOver(zone: ZoneTable, span: { fromUtcSeconds: number; toUtcSeconds: number }): LocalDays {
  const firstDay = Math.floor(zone.localFromUtc(span.fromUtcSeconds) / 86_400);
  if (!(span.toUtcSeconds > span.fromUtcSeconds)) return { firstDay, count: 0, edges: new Float64Array(1) };
  const lastDay = Math.floor(zone.localFromUtc(span.toUtcSeconds - 1) / 86_400);
  const count = lastDay - firstDay + 1;
  const edges = Float64Array.from({ length: count + 1 }, (_, k) => dayStart(zone, firstDay + k));
  return { firstDay, count, edges };
}

/** Instant at which a local day begins: its midnight, the first of two, or the end of a skipped hour. */
export const dayStart = (zone: ZoneTable, day: number): number => firstInstant(zone.utcFromLocal(day * 86_400));

function firstInstant(local: LocalInstant): number {
  if (local.status === "unique") return local.utcSeconds;
  return local.status === "repeated" ? local.firstUtcSeconds : local.shiftedUtcSeconds;
}

export const localDateOfDay = (days: LocalDays, k: number): LocalDate => localDateFromDayNumber(days.firstDay + k);

/**
 * Edges of the hours of local days, ascending: each day is cut every 3,600 s from its beginning, so that a day has 23,
 * 24 or 25 of them. Where the clocks move by half an hour, one hour more of that day is half as long.
 */
export function localHourEdges(days: LocalDays): Float64Array {
  const edges: number[] = [];
  for (let k = 0; k < days.count; k++) {
    const end = days.edges[k + 1] as number;
    for (let at = days.edges[k] as number; at < end; at += 3600) edges.push(at);
  }
  if (days.count > 0) edges.push(days.edges[days.count] as number);
  return Float64Array.from(edges);
}

/** Instants within a span (its end not included) at which the offset of a zone changes, with the change [s]. */
export function offsetChanges(
  zone: ZoneTable,
  span: { fromUtcSeconds: number; toUtcSeconds: number },
): { atUtcSeconds: number; bySeconds: number }[] {
  const found: { atUtcSeconds: number; bySeconds: number }[] = [];
  let before = zone.offsetAt(span.fromUtcSeconds);
  for (let low = span.fromUtcSeconds; low < span.toUtcSeconds; low += 86_400) {
    let high = Math.min(low + 86_400, span.toUtcSeconds);
    const after = zone.offsetAt(high);
    if (after === before) continue;
    let left = low;
    while (high - left > 1) {
      const middle = Math.floor((left + high) / 2);
      if (zone.offsetAt(middle) === before) left = middle;
      else high = middle;
    }
    if (high < span.toUtcSeconds) found.push({ atUtcSeconds: high, bySeconds: after - before });
    before = after;
  }
  return found;
}
