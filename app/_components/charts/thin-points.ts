/** A sample of a series: UTC seconds and value. */
export type Point = { t: number; v: number };

/** Keeps the first, lowest, highest and last sample of each of `buckets` equal stretches of time, in order; short series stay whole. */
export function thinPoints(points: readonly Point[], buckets: number): Point[] {
  const first = points[0];
  const last = points[points.length - 1];
  if (!first || !last || points.length <= buckets * 4) return [...points];
  const width = (last.t - first.t) / buckets || 1;
  const kept: Point[] = [];
  let start = 0;
  while (start < points.length) {
    const bucket = Math.floor(((points[start] as Point).t - first.t) / width);
    let end = start;
    let low = start;
    let high = start;
    while (end + 1 < points.length && Math.floor(((points[end + 1] as Point).t - first.t) / width) === bucket) {
      end++;
      if ((points[end] as Point).v < (points[low] as Point).v) low = end;
      if ((points[end] as Point).v > (points[high] as Point).v) high = end;
    }
    for (const index of [...new Set([start, low, high, end])].sort((a, b) => a - b)) kept.push(points[index] as Point);
    start = end + 1;
  }
  return kept;
}
