import { HOLD_AFTER_LAST_SECONDS } from "../resample";
import { type PointSeries, usualStepSeconds } from "../samples";

/** Least share of a span that samples must stand for before its mean is given. Judgement, no source. */
export const LEAST_MEAN_COVERAGE = 0.75;

/** A mean with the share of its span (0-1) that samples stand for, or the reason why there is none. */
export type SpanMean =
  | { value: number; coverage: number }
  | { value: null; coverage: number; reason: "no-samples" | "below-coverage" };

/**
 * Mean of a point, in its stored unit, in each span `[edges[k], edges[k + 1])` of ascending UTC seconds: hours or local days.
 *
 * Of `interval` samples it is the plain mean of those in the span, and coverage is their number over the number that the
 * usual step makes (at most 1). A `change-of-value` sample holds until the next, the last one for a day at most, and
 * nothing holds before the first: the mean is weighted by time, and coverage is the held time.
 */
export function spanMeans(
  series: PointSeries,
  edges: Float64Array,
  options: { leastCoverage?: number } = {},
): SpanMean[] {
  const least = options.leastCoverage ?? LEAST_MEAN_COVERAGE;
  const { sums, covered } = series.sampling === "interval" ? countedSums(series, edges) : heldSums(series, edges);
  const means: SpanMean[] = [];
  for (let k = 0; k + 1 < edges.length; k++) {
    const weight = covered.weight[k] as number;
    const coverage = covered.share[k] as number;
    if (weight === 0) means.push({ value: null, coverage: 0, reason: "no-samples" });
    else if (coverage < least) means.push({ value: null, coverage, reason: "below-coverage" });
    else means.push({ value: (sums[k] as number) / weight, coverage });
  }
  return means;
}

/** Share of each span (0-1) that the samples of a point stand for, as `spanMeans` counts it. */
export function spanCoverage(series: PointSeries, edges: Float64Array): Float64Array {
  return (series.sampling === "interval" ? countedSums(series, edges) : heldSums(series, edges)).covered.share;
}

type Sums = { sums: Float64Array; covered: { weight: Float64Array; share: Float64Array } };

function countedSums({ samples: { ts, v, decimals } }: PointSeries, edges: Float64Array): Sums {
  const spans = Math.max(0, edges.length - 1);
  const sums = new Float64Array(spans);
  const weight = new Float64Array(spans);
  const share = new Float64Array(spans);
  const scale = 10 ** decimals;
  const usual = usualStepSeconds(ts) ?? Number.POSITIVE_INFINITY;
  let i = 0;
  for (let k = 0; k < spans; k++) {
    const from = edges[k] as number;
    const until = edges[k + 1] as number;
    while (i < ts.length && (ts[i] as number) < from) i++;
    while (i < ts.length && (ts[i] as number) < until) {
      sums[k] = (sums[k] as number) + (v[i++] as number) / scale;
      weight[k] = (weight[k] as number) + 1;
    }
    // A span shorter than the step is covered by one sample; a single sample of a point says nothing of its step.
    const expected = Math.max(1, (until - from) / usual);
    share[k] = Math.min(1, (weight[k] as number) / expected);
  }
  return { sums, covered: { weight, share } };
}

function heldSums({ samples: { ts, v, decimals } }: PointSeries, edges: Float64Array): Sums {
  const spans = Math.max(0, edges.length - 1);
  const sums = new Float64Array(spans);
  const weight = new Float64Array(spans);
  const scale = 10 ** decimals;
  let k = 0;
  for (let i = 0; i < ts.length && k < spans; i++) {
    const until = i + 1 < ts.length ? (ts[i + 1] as number) : (ts[i] as number) + HOLD_AFTER_LAST_SECONDS;
    let from = Math.max(ts[i] as number, edges[k] as number);
    while (from < until && k < spans) {
      const edge = edges[k + 1] as number;
      if (edge <= from) {
        k++;
        continue;
      }
      const held = Math.min(until, edge) - from;
      sums[k] = (sums[k] as number) + held * ((v[i] as number) / scale);
      weight[k] = (weight[k] as number) + held;
      from += held;
    }
  }
  const share = weight.map((held, at) => {
    const length = (edges[at + 1] as number) - (edges[at] as number);
    return length > 0 ? held / length : 0;
  });
  return { sums, covered: { weight, share } };
}
