import type { FileTally } from "./file-tally";
import { makeFinding } from "./findings";
import { POINT_NOTICES } from "./point-draft";
import type { TrendFinding, TrendFindingCode } from "./trend-file";

const CODE_OF_LIST = {
  event: "event-row",
  unreadable: "row-unreadable",
  ambiguous: "ambiguous-local-time",
  nonexistent: "nonexistent-local-time",
  repeated: "repeated-hour-resolved",
  trailing: "trailing-rows-ignored",
  identical: "duplicate-identical",
  conflicting: "duplicate-conflicting",
} as const satisfies Record<string, TrendFindingCode>;

/** What was noticed in the parts of a file read so far: a count for each code, the points taken together. */
export function findingsSoFar({ lists, points }: FileTally): TrendFinding[] {
  const counts = new Map<TrendFindingCode, number>();
  for (const key of Object.keys(CODE_OF_LIST) as (keyof typeof CODE_OF_LIST)[])
    counts.set(CODE_OF_LIST[key], lists[key].count);
  for (const notice of POINT_NOTICES)
    counts.set(
      notice,
      points.reduce((sum, point) => sum + point.lists[notice].count, 0),
    );
  return [...counts].flatMap(([code, count]) => (count > 0 ? [makeFinding(code, { count })] : []));
}
