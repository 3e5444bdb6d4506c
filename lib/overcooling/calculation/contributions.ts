import { quantileOfSorted } from "@/lib/statistics/quantile";

/** Ranks between which a draw counts as one near the median. */
const WINDOW = { from: 0.45, to: 0.55 } as const;

export type Spread = { p10: number; p50: number; p90: number };

/** P10, P50 and P90 of draws. */
export function spreadOf(draws: Float64Array): Spread {
  const ascending = Float64Array.from(draws).sort();
  return {
    p10: quantileOfSorted(ascending, 0.1),
    p50: quantileOfSorted(ascending, 0.5),
    p90: quantileOfSorted(ascending, 0.9),
  };
}

/**
 * Splits the median of a total over its cells so that they add up to it exactly. Medians of parts do not add up to the
 * median of the whole; the mean of each part over the draws whose total ranks from 45 to 55 % does, but for a small
 * remainder, which the uncertain parts share in proportion to their size. `cells` hold the draws of each part; their
 * sum is `total` in each draw.
 */
export function contributionsTo(total: Float64Array, cells: readonly Float64Array[]): number[] {
  const order = Array.from(total.keys()).sort((a, b) => (total[a] as number) - (total[b] as number));
  const from = Math.floor(WINDOW.from * (order.length - 1));
  const near = order.slice(from, Math.ceil(WINDOW.to * (order.length - 1)) + 1);
  const means = cells.map((cell) => near.reduce((sum, i) => sum + (cell[i] as number), 0) / near.length);
  const weights = cells.map((cell, k) =>
    cell[0] === cell[1] && cell[1] === cell[2] ? 0 : Math.abs(means[k] as number),
  );
  const weight = weights.reduce((sum, each) => sum + each, 0);
  const remainder = spreadOf(total).p50 - means.reduce((sum, each) => sum + each, 0);
  return weight === 0 ? means : means.map((each, k) => each + (remainder * (weights[k] as number)) / weight);
}
