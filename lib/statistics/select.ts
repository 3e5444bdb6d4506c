/**
 * The `k`-th smallest of `values` (0 for the least), by Hoare's quickselect in linear time; their order is changed so
 * that none before place `k` is larger and none after it smaller. `from` and `to` bound the search to a part that is
 * known to hold it. No NaN.
 */
export function selectInPlace(values: Float64Array, k: number, from = 0, to = values.length - 1): number {
  let left = from;
  let right = to;
  while (left < right) {
    const pivot = values[(left + right) >> 1] as number;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] as number) < pivot) i++;
      while ((values[j] as number) > pivot) j--;
      if (i <= j) {
        const swapped = values[i] as number;
        values[i++] = values[j] as number;
        values[j--] = swapped;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k] as number;
}

/**
 * Quantiles at ascending `ps` without sorting: the same figures as `quantiles`, for thousands of short lists of draws.
 * The input is not changed. Throws on an empty list.
 */
export function quantilesBySelection(values: Float64Array, ps: readonly number[]): number[] {
  if (values.length === 0) throw new RangeError("a quantile needs at least one value");
  const work = Float64Array.from(values);
  let from = 0;
  return ps.map((p) => {
    const position = (work.length - 1) * Math.min(1, Math.max(0, p));
    const below = Math.floor(position);
    const lower = selectInPlace(work, below, from);
    from = below;
    if (position === below) return lower;
    let upper = Number.POSITIVE_INFINITY;
    for (let i = below + 1; i < work.length; i++) upper = Math.min(upper, work[i] as number);
    return lower + (upper - lower) * (position - below);
  });
}
