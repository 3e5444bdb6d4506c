import type { Samples } from "./samples";

/**
 * Value of a point as last sampled at or before each instant (ascending or not), in its stored unit; null before the
 * first sample or when the sample is older than `maxAgeSeconds`.
 */
export function asOf(samples: Samples, instants: ArrayLike<number>, maxAgeSeconds: number): (number | null)[] {
  const { ts, v, decimals } = samples;
  const scale = 10 ** decimals;
  const found: (number | null)[] = [];
  for (let k = 0; k < instants.length; k++) {
    const at = instants[k] as number;
    let low = 0;
    let high = ts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ts[middle] as number) <= at) low = middle + 1;
      else high = middle;
    }
    const i = low - 1;
    found.push(i >= 0 && at - (ts[i] as number) <= maxAgeSeconds ? (v[i] as number) / scale : null);
  }
  return found;
}
