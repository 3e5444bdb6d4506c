/** A figure with the lowest and highest value it may have; `low <= value <= high`, all in one unit. */
export type ValueRange = { value: number; low: number; high: number };

/** All three multiplied by one exact, non-negative number. */
export const scaledRange = (range: ValueRange, factor: number): ValueRange => ({
  value: range.value * factor,
  low: range.low * factor,
  high: range.high * factor,
});

/**
 * Sum of ranges that err together (one meter, one device): lows add to the low, highs to the high.
 * Wider than the range of a sum of independent values.
 */
export function summedRange(ranges: readonly ValueRange[]): ValueRange {
  const sum = { value: 0, low: 0, high: 0 };
  for (const each of ranges) {
    sum.value += each.value;
    sum.low += each.low;
    sum.high += each.high;
  }
  return sum;
}
