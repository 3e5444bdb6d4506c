import { quantileOfSorted } from "./quantile";

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

/** Ranges that values are counted into: a few of them hold the ranks that are asked for. */
const RANGES = 1024;

/**
 * Quantiles at ascending `ps` without sorting: the same figures as `quantiles`, for thousands of short lists of draws.
 * Values are counted by range, and only those in the ranges of the ranks asked for are sorted. The input is not
 * changed. Throws on an empty list. No NaN.
 */
export function quantilesBySelection(values: Float64Array, ps: readonly number[]): number[] {
  if (values.length === 0) throw new RangeError("a quantile needs at least one value");
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const perUnit = (RANGES - 1) / (high - low);
  if (!(perUnit > 0 && perUnit < Number.POSITIVE_INFINITY)) {
    const ascending = values.slice().sort();
    return ps.map((p) => quantileOfSorted(ascending, p));
  }
  const counts = new Int32Array(RANGES);
  for (let i = 0; i < values.length; i++) {
    const range = (((values[i] as number) - low) * perUnit) | 0;
    counts[range] = (counts[range] as number) + 1;
  }
  const positions = ps.map((p) => (values.length - 1) * Math.min(1, Math.max(0, p)));
  const asked = rangesOfRanks(counts, positions);
  const near = new Float64Array(asked.size);
  let found = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (asked.marks[((value - low) * perUnit) | 0] === 1) near[found++] = value;
  }
  near.sort();
  return positions.map((position) => {
    const below = Math.floor(position);
    const lower = near[below - asked.before(below)] as number;
    if (position === below) return lower;
    return lower + ((near[below + 1 - asked.before(below + 1)] as number) - lower) * (position - below);
  });
}

/** Ranges that hold the ranks about some positions; `before` counts the values left out before a rank's range. */
function rangesOfRanks(
  counts: Int32Array,
  positions: readonly number[],
): { marks: Uint8Array; size: number; before(rank: number): number } {
  const marks = new Uint8Array(counts.length);
  const leftOut = new Map<number, number>();
  const ranks = positions.flatMap((each) => [Math.floor(each), Math.floor(each) + 1]);
  let [range, passed, skipped, size] = [0, 0, 0, 0];
  for (const rank of ranks) {
    if (leftOut.has(rank)) continue;
    while (range < counts.length && passed + (counts[range] as number) <= rank) {
      passed += counts[range] as number;
      if (marks[range] === 0) skipped += counts[range] as number;
      range++;
    }
    if (range === counts.length) break;
    if (marks[range] === 0) size += counts[range] as number;
    marks[range] = 1;
    leftOut.set(rank, skipped);
  }
  return { marks, size, before: (rank) => leftOut.get(rank) ?? skipped };
}
