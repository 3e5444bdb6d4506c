import { quantilesBySelection, selectInPlace } from "@/lib/statistics/select";

/** Ranks between which a draw counts as one near the median. */
const WINDOW = { from: 0.45, to: 0.55 } as const;

export type Spread = { p10: number; p50: number; p90: number };

/** P10, P50 and P90 of draws. */
export function spreadOf(draws: Float64Array): Spread {
  const [p10, p50, p90] = quantilesBySelection(draws, [0.1, 0.5, 0.9]) as [number, number, number];
  return { p10, p50, p90 };
}

/** Numbers of the draws whose total ranks from 45 to 55 %, ascending; those that tie with the first or last as well. */
export function drawsNearMedian(total: Float64Array): Int32Array {
  const work = total.slice();
  const from = Math.floor(WINDOW.from * (total.length - 1));
  const to = Math.ceil(WINDOW.to * (total.length - 1));
  const low = selectInPlace(work, from);
  const high = selectInPlace(work, to, from);
  const near: number[] = [];
  for (let i = 0; i < total.length; i++) {
    if ((total[i] as number) >= low && (total[i] as number) <= high) near.push(i);
  }
  return new Int32Array(near);
}

/** A part of a total: its mean over the draws near the total's median, and whether any uncertain input moves it. */
export type NearMedian = { mean: number; varies: boolean };

/**
 * Splits the median of a total over its parts so that they add up to it exactly. Medians of parts do not add up to the
 * median of the whole; the mean of each part over the draws whose total lies near the median does, but for a small
 * remainder, which the uncertain parts share in proportion to their size.
 */
export function contributionsTo(median: number, parts: readonly NearMedian[]): number[] {
  const weights = parts.map((each) => (each.varies ? Math.abs(each.mean) : 0));
  const weight = weights.reduce((sum, each) => sum + each, 0);
  const remainder = median - parts.reduce((sum, each) => sum + each.mean, 0);
  if (weight === 0) return parts.map((each) => each.mean);
  return parts.map((each, k) => each.mean + (remainder * (weights[k] as number)) / weight);
}
