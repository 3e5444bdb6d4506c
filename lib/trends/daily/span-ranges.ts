import { HOLD_AFTER_LAST_SECONDS } from "../resample";
import type { PointSeries } from "../samples";

export type SpanRange = { lowest: number; highest: number };

/**
 * Lowest and highest value of a point, in its stored unit, in each span `[edges[k], edges[k + 1])`: of its samples, and
 * of a `change-of-value` point also of the value that still held when the span began. Null where there is none.
 */
export function spanRanges({ sampling, samples }: PointSeries, edges: Float64Array): (SpanRange | null)[] {
  const { ts, v, decimals } = samples;
  const scale = 10 ** decimals;
  const ranges: (SpanRange | null)[] = [];
  let i = 0;
  for (let k = 0; k + 1 < edges.length; k++) {
    const from = edges[k] as number;
    const until = edges[k + 1] as number;
    while (i < ts.length && (ts[i] as number) < from) i++;
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    const held = sampling === "change-of-value" && i > 0 && !(ts[i] === from) && until > from;
    if (held && (i < ts.length || from < (ts[i - 1] as number) + HOLD_AFTER_LAST_SECONDS)) {
      lowest = v[i - 1] as number;
      highest = lowest;
    }
    for (; i < ts.length && (ts[i] as number) < until; i++) {
      lowest = Math.min(lowest, v[i] as number);
      highest = Math.max(highest, v[i] as number);
    }
    ranges.push(lowest <= highest ? { lowest: lowest / scale, highest: highest / scale } : null);
  }
  return ranges;
}
