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

/**
 * How a point is sampled: at intervals when at least two thirds of its steps equal the median step (within 2 s, or 2 %
 * once there are five), else on change of value. Common practice, no source: systems do not say.
 */
export function rhythmOf(instants: Float64Array): Rhythm {
  const steps = instants.length - 1;
  if (steps < 1) return { sampling: "interval", stepSeconds: null };
  const step = new Float64Array(steps);
  for (let i = 0; i < steps; i++) step[i] = (instants[i + 1] as number) - (instants[i] as number);
  const median = step.slice().sort()[steps >> 1] as number;
  const tolerance = steps < 5 ? 2 : Math.max(2, 0.02 * median);
  let alike = 0;
  for (let i = 0; i < steps; i++) if (Math.abs((step[i] as number) - median) <= tolerance) alike++;
  // Two steps of different length say nothing about a rhythm; only equal ones do.
  const regular = steps === 2 ? alike === 2 : alike * 3 >= steps * 2;
  return regular ? { sampling: "interval", stepSeconds: median } : { sampling: "change-of-value", stepSeconds: null };
}

/** Steps over 1.5 times the usual one, with the number of rows that would have stood between. */
export function findGaps(instants: Float64Array, stepSeconds: number): Gap[] {
  const gaps: Gap[] = [];
  for (let i = 1; i < instants.length; i++) {
    const fromTs = instants[i - 1] as number;
    const toTs = instants[i] as number;
    if (toTs - fromTs > 1.5 * stepSeconds) {
      gaps.push({ fromTs, toTs, missing: Math.max(1, Math.round((toTs - fromTs) / stepSeconds) - 1) });
    }
  }
  return gaps;
}
