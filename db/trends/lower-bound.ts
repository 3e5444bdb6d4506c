/** Index of the first time at or after `ts`; the length when there is none. */
export function lowerBound(times: Float64Array, ts: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times[middle] as number) < ts) low = middle + 1;
    else high = middle;
  }
  return low;
}
