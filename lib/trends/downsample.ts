/** Points of a line for a chart; a null value breaks the line. */
export type ChartPoint = { utcSeconds: number; value: number | null };

/**
 * Lowest and highest value of each of `buckets` equal spans, in the order they came, so that no peak is lost: about two
 * points a pixel when `buckets` is the width in pixels. A NaN in the values (an interval without data) breaks the line
 * once. Values at `count <= 2 * buckets` are passed on as they are.
 */
export function downsample(
  series: { startUtcSeconds: number; stepSeconds: number; values: Float64Array },
  buckets: number,
): ChartPoint[] {
  const { startUtcSeconds, stepSeconds, values } = series;
  if (!(buckets >= 1)) throw new RangeError("a chart needs at least one bucket");
  const points: ChartPoint[] = [];
  const push = (i: number): void => {
    const value = values[i] as number;
    points.push({ utcSeconds: startUtcSeconds + i * stepSeconds, value: Number.isNaN(value) ? null : value });
  };
  const perBucket = values.length <= 2 * buckets ? 1 : values.length / buckets;
  const total = perBucket === 1 ? values.length : buckets;
  for (let bucket = 0; bucket < total; bucket++) {
    const from = Math.floor(bucket * perBucket);
    const until = Math.min(values.length, Math.floor((bucket + 1) * perBucket));
    for (const i of turningPoints(values, from, until)) {
      if (Number.isNaN(values[i] as number) && points.at(-1)?.value === null) continue;
      push(i);
    }
  }
  return points;
}

/** Indexes of the lowest, the highest and the first missing value of a span, ascending and without repeats. */
function turningPoints(values: Float64Array, from: number, until: number): number[] {
  let lowest = -1;
  let highest = -1;
  let missing = -1;
  for (let i = from; i < until; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) {
      if (missing < 0) missing = i;
      continue;
    }
    if (lowest < 0 || value < (values[lowest] as number)) lowest = i;
    if (highest < 0 || value > (values[highest] as number)) highest = i;
  }
  return [...new Set([lowest, highest, missing])].filter((i) => i >= 0).sort((a, b) => a - b);
}
