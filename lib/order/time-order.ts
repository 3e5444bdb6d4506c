/**
 * Indices of the times [s], ascending, equal ones in the order they came in. Whole times share one double with
 * their index where both fit: sorting numbers by a comparison of one's own takes many times as long.
 */
export function timeOrder(ts: Float64Array): Float64Array | Uint32Array {
  const count = ts.length;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  let isWhole = true;
  for (let i = 0; i < count; i++) {
    const time = ts[i] as number;
    if (time < first) first = time;
    if (time > last) last = time;
    isWhole &&= Math.floor(time) === time;
  }
  if (!isWhole || (last - first + 1) * count > Number.MAX_SAFE_INTEGER) {
    return Uint32Array.from({ length: count }, (_, i) => i).sort(
      (a, b) => (ts[a] as number) - (ts[b] as number) || a - b,
    );
  }
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i++) keys[i] = ((ts[i] as number) - first) * count + i;
  keys.sort();
  for (let i = 0; i < count; i++) keys[i] = (keys[i] as number) % count;
  return keys;
}

/** Whether each time is later than the one before it. */
export function isAscending(ts: Float64Array): boolean {
  for (let i = 1; i < ts.length; i++) if ((ts[i] as number) <= (ts[i - 1] as number)) return false;
  return true;
}
