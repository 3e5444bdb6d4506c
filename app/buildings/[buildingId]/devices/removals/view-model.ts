import type { RemovalPoint } from "@/lib/electrical/removal-history";
import { dayNumberFromLocalDate } from "@/lib/time/civil-date";
import { formatNumber } from "@/lib/units/format";

/** A share in %; blank where it has no meaning yet. */
export const percent = (share: number | null): string =>
  share === null ? "" : formatNumber(100 * share, { decimals: 0 });

export type Step = { fromPct: number; toPct: number; present: number };

/** Stretches with the same number of devices in the building, over the days from the first step of all to the last day. */
export function stepsOf(points: readonly RemovalPoint[], span: { from: string; to: string }): Step[] {
  const day = (date: string): number => dayNumberFromLocalDate(date) ?? 0;
  const start = day(span.from);
  const length = Math.max(1, day(span.to) - start);
  const at = (date: string): number => (100 * (day(date) - start)) / length;
  return points.map((point, index) => {
    const next = points[index + 1];
    return { fromPct: at(point.onDate), toPct: next ? at(next.onDate) : 100, present: point.present };
  });
}

/** The page's one sentence. */
export function removalsLede(points: readonly RemovalPoint[], noun: string): string {
  const last = points.at(-1);
  if (!last) return `No ${noun} was found yet.`;
  if (last.everRemoved === 0) return `${last.found} ${noun} found, none removed yet.`;
  const back = last.returned + last.foundAfterRemoval;
  return `${last.found} ${noun} found, ${last.everRemoved} removed; ${back} came back or were found after the first removal.`;
}
