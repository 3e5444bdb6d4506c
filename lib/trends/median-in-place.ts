/**
 * Median of values without NaN by selection (Hoare's quickselect), in linear time; the order of `values` is changed.
 * Equal to `median` of lib/statistics, for arrays of tens of thousands where sorting is the cost. Throws on an empty list.
 */
export function medianInPlace(values: Float64Array): number {
  const count = values.length;
  if (count === 0) throw new RangeError("a median needs at least one value");
  const upper = select(values, count >> 1);
  if (count % 2 === 1) return upper;
  // All below the middle now stand before it: the largest of them is its neighbour.
  let lower = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count >> 1; i++) lower = Math.max(lower, values[i] as number);
  return lower + (upper - lower) / 2;
}

function select(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
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
