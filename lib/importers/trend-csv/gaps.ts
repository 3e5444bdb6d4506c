import type { Sampling } from "./trend-file";

export type Rhythm = { sampling: Sampling; stepSeconds: number | null };
export type Gap = { fromTs: number; toTs: number; missing: number };

/** Ascending without repeats. */
export function sortedInstants(instants: Float64Array): Float64Array {
  let ascending = true;
  for (let i = 1; i < instants.length && ascending; i++) {
    ascending = (instants[i] as number) > (instants[i - 1] as number);
  }
  if (ascending) return instants;
  const sorted = instants.slice().sort();
  let kept = 0;
  for (let i = 0; i < sorted.length; i++) {
    if (i > 0 && sorted[i] === sorted[i - 1]) continue;
    sorted[kept++] = sorted[i] as number;
  }
  return sorted.slice(0, kept);
}

/** Steps between instants by their length, with the number of steps that were not told apart. */
export type StepCounts = { steps: ReadonlyMap<number, number>; others: number };

/**
 * How a point is sampled: at intervals when at least two thirds of its steps equal the median step (within 2 s, or 2 %
 * once there are five), else on change of value. Common practice, no source: systems do not say.
 */
export function rhythmOf({ steps, others }: StepCounts): Rhythm {
  const counts = [...steps].sort((a, b) => a[0] - b[0]);
  const told = counts.reduce((sum, [, count]) => sum + count, 0);
  const all = told + others;
  if (all < 1) return { sampling: "interval", stepSeconds: null };
  let before = 0;
  const place = told >> 1;
  const median = (counts.find(([, count]) => {
    before += count;
    return before > place;
  }) ?? counts[0])?.[0] as number;
  const tolerance = all < 5 ? 2 : Math.max(2, 0.02 * median);
  let alike = 0;
  for (const [length, count] of counts) if (Math.abs(length - median) <= tolerance) alike += count;
  // Two steps of different length say nothing about a rhythm; only equal ones do.
  const regular = all === 2 ? alike === 2 : alike * 3 >= all * 2;
  return regular ? { sampling: "interval", stepSeconds: median } : { sampling: "change-of-value", stepSeconds: null };
}

/** Rows that would have stood within a step of this length. */
export const missingIn = (length: number, stepSeconds: number): number =>
  Math.max(1, Math.round(length / stepSeconds) - 1);
