import { makeFinding } from "./findings";
import { formatUtc } from "./format-utc";
import { missingIn } from "./gaps";
import type { InstantTally } from "./instant-tally";
import type { TrendFinding } from "./trend-file";

/** Longest gaps that are named one by one; the rest are summed up. */
const GAPS_NAMED = 20;

export type RhythmOfPoint = { name: string; instants: InstantTally; stepSeconds: number | null };

type Gap = { fromTs: number; length: number; missing: number; points: string[] };

/** Gaps of points at intervals, each once for all points that share it. `pointCount` is that of the file. */
export function gapFindings(points: readonly RhythmOfPoint[], pointCount: number): TrendFinding[] {
  const gaps = new Map<string, Gap>();
  // Gaps that are too many to remember each by its place.
  let [unnamed, unnamedRows] = [0, 0];
  const namesByInstants = new Map<InstantTally, { names: string[]; stepSeconds: number }>();
  for (const { name, instants, stepSeconds } of points) {
    if (stepSeconds === null) continue;
    const known = namesByInstants.get(instants);
    if (known) known.names.push(name);
    else namesByInstants.set(instants, { names: [name], stepSeconds });
  }
  for (const [instants, { names, stepSeconds }] of namesByInstants) {
    for (const { length, count, places } of instants.gaps(stepSeconds)) {
      const missing = missingIn(length, stepSeconds);
      unnamed += count - places.length;
      unnamedRows += (count - places.length) * missing;
      for (const fromTs of places) {
        const key = `${fromTs} ${length}`;
        const gap = gaps.get(key);
        if (gap) gap.points.push(...names);
        else gaps.set(key, { fromTs, length, missing, points: [...names] });
      }
    }
  }
  const longestFirst = [...gaps.values()].sort((a, b) => b.length - a.length || a.fromTs - b.fromTs);
  const named = longestFirst.slice(0, GAPS_NAMED).sort((a, b) => a.fromTs - b.fromTs);
  const rest = longestFirst.slice(GAPS_NAMED);
  const count = rest.length + unnamed;
  return [
    ...named.map((gap) => gapFinding(gap, pointCount)),
    ...(count > 0
      ? [makeFinding("gap", { count, missing: rest.reduce((sum, gap) => sum + gap.missing, unnamedRows) })]
      : []),
  ];
}

function gapFinding({ fromTs, length, missing, points }: Gap, pointCount: number): TrendFinding {
  const where =
    points.length === 1 ? { point: points[0] as string } : points.length === pointCount ? {} : { points: [...points] };
  return makeFinding("gap", { ...where, fromUtc: formatUtc(fromTs), toUtc: formatUtc(fromTs + length), missing });
}
