/**
 * Quantile `p` in [0, 1] of ascending values, linear between order statistics
 * (Hyndman & Fan 1996, type 7: the default of R and numpy). Throws on an empty list.
 */
export function quantileOfSorted(ascending: ArrayLike<number>, p: number): number {
  if (ascending.length === 0) throw new RangeError("a quantile needs at least one value");
  const position = (ascending.length - 1) * Math.min(1, Math.max(0, p));
  const below = Math.floor(position);
  const above = Math.min(below + 1, ascending.length - 1);
  const lower = ascending[below] as number;
  return lower + ((ascending[above] as number) - lower) * (position - below);
}

/** Quantiles of values in any order; the input is not changed. */
export function quantiles(values: ArrayLike<number>, ps: readonly number[]): number[] {
  const ascending = Float64Array.from(values).sort();
  return ps.map((p) => quantileOfSorted(ascending, p));
}

/** Median of values in any order. */
export const median = (values: ArrayLike<number>): number => quantiles(values, [0.5])[0] as number;
