import type { Grid } from "./grid";
import { type PointSeries, usualStepSeconds } from "./samples";

/**
 * How long the last sample of a change-of-value record is taken to hold. One day: setpoints and states of a zone
 * follow a daily schedule, so a live point changes (or is re-sent) within a day, and a record that ends says nothing
 * of the weeks after it. Judgement, no source.
 */
export const HOLD_AFTER_LAST_SECONDS = 86400;

/** An interval sample reaches the next one when that comes within this many usual steps; otherwise there is a gap. */
export const GAP_STEPS = 1.5;

/** Least part of a grid interval that must be covered by samples for the interval to have a value. */
const LEAST_COVER = 0.5;

/**
 * Time-weighted mean of a point in each interval of a grid, in the point's stored unit. NaN marks an interval with
 * no value (less than half of it covered): inside arrays only, never in a result.
 *
 * Each sample holds from its own instant: an `interval` sample to the next, or for one usual step where the next is
 * more than 1.5 usual steps away; a `change-of-value` sample until the next, however long, and the last one for
 * `holdAfterLastSeconds` at most. Nothing holds before the first sample, and of two samples at one instant the later counts.
 */
export function resample(
  series: PointSeries,
  grid: Grid,
  options: { holdAfterLastSeconds?: number } = {},
): Float64Array {
  const { ts, v, decimals } = series.samples;
  const { startUtcSeconds: start, stepSeconds: step, count } = grid;
  const end = start + count * step;
  const scale = 10 ** decimals;
  const changes = series.sampling === "change-of-value";
  const usual = usualStepSeconds(ts) ?? step;
  const reach = changes ? Number.POSITIVE_INFINITY : usual * GAP_STEPS;
  const holdLast = changes ? (options.holdAfterLastSeconds ?? HOLD_AFTER_LAST_SECONDS) : usual;

  const sum = new Float64Array(count);
  const covered = new Float64Array(count);
  for (let i = 0; i < ts.length; i++) {
    let from = ts[i] as number;
    if (from >= end) break;
    let until = from + holdLast;
    if (i + 1 < ts.length) {
      const next = ts[i + 1] as number;
      until = next - from <= reach ? next : from + usual;
    }
    if (until <= start) continue;
    if (from < start) from = start;
    if (until > end) until = end;
    const value = (v[i] as number) / scale;
    let cell = Math.floor((from - start) / step);
    let edge = start + (cell + 1) * step;
    while (until > edge) {
      sum[cell] = (sum[cell] as number) + value * (edge - from);
      covered[cell] = (covered[cell] as number) + (edge - from);
      from = edge;
      edge += step;
      cell++;
    }
    sum[cell] = (sum[cell] as number) + value * (until - from);
    covered[cell] = (covered[cell] as number) + (until - from);
  }
  for (let cell = 0; cell < count; cell++) {
    const seconds = covered[cell] as number;
    sum[cell] = seconds >= LEAST_COVER * step ? (sum[cell] as number) / seconds : Number.NaN;
  }
  return sum;
}

/** A state (0 or 1) in each interval of a grid: what it was for at least half of the covered time; NaN where unknown. */
export function resampleState(
  series: PointSeries,
  grid: Grid,
  options: { holdAfterLastSeconds?: number } = {},
): Float64Array {
  const share = resample(series, grid, options);
  for (let i = 0; i < share.length; i++) {
    const each = share[i] as number;
    if (!Number.isNaN(each)) share[i] = each >= 0.5 ? 1 : 0;
  }
  return share;
}
