import { median } from "@/lib/statistics/quantile";
import { type Grid, stepHours } from "./grid";
import { medianInPlace } from "./median-in-place";

const WEEK_SECONDS = 7 * 86400;
/** A week needs this many occupied hours with a setpoint to count. Judgement, no source. */
const LEAST_WEEK_HOURS = 5;
/** A change of the occupied setpoint from here on is a step [K]; smaller ones are trimming. Judgement, no source. */
export const STEP_K = 0.8;
/** Weeks that must stand on either side of a step. Judgement, no source. */
const WEEKS_EACH_SIDE = 2;
/** Weeks with a setpoint below which no step can be told. */
export const LEAST_STEP_WEEKS = 2 * WEEKS_EACH_SIDE;

export type WeekMedian = { startUtcSeconds: number; hours: number; medianC: number };

/** A lasting fall of the occupied setpoint: typical weeks before and after, and the first interval at the new level. */
export type SetpointStep = { atUtcSeconds: number; beforeC: number; afterC: number };

export type SetpointHistory = {
  occupiedMedianC: number | null;
  unoccupiedMedianC: number | null;
  /** Occupied medians by week of the record (seven days from its start). */
  weeks: WeekMedian[];
  stepDown: SetpointStep | null;
};

/** Occupied and unoccupied medians of a setpoint trend and a step down that lasted to the end of the record. */
export function setpointHistory(grid: Grid, setpointC: Float64Array, occupied: Uint8Array): SetpointHistory {
  const during = gather(setpointC, occupied, 1, 0, grid.count);
  const outside = gather(setpointC, occupied, 0, 0, grid.count);
  const weeks = weekMedians(grid, setpointC, occupied);
  return {
    occupiedMedianC: during.length > 0 ? medianInPlace(during) : null,
    unoccupiedMedianC: outside.length > 0 ? medianInPlace(outside) : null,
    weeks,
    stepDown: lastingStepDown(grid, setpointC, occupied, weeks),
  };
}

/** The recorded values of the intervals that are (1) or are not (0) occupied, as a fresh array. */
function gather(values: Float64Array, occupied: Uint8Array, wanted: number, from: number, until: number): Float64Array {
  const found = new Float64Array(until - from);
  let count = 0;
  for (let i = from; i < until; i++) {
    const value = values[i] as number;
    if (occupied[i] === wanted && !Number.isNaN(value)) found[count++] = value;
  }
  return found.subarray(0, count);
}

function weekMedians(grid: Grid, setpointC: Float64Array, occupied: Uint8Array): WeekMedian[] {
  const perWeek = Math.max(1, Math.round(WEEK_SECONDS / grid.stepSeconds));
  const weeks: WeekMedian[] = [];
  for (let from = 0; from < grid.count; from += perWeek) {
    const values = gather(setpointC, occupied, 1, from, Math.min(from + perWeek, grid.count));
    const hours = values.length * stepHours(grid);
    if (hours < LEAST_WEEK_HOURS) continue;
    weeks.push({
      startUtcSeconds: grid.startUtcSeconds + from * grid.stepSeconds,
      hours,
      medianC: medianInPlace(values),
    });
  }
  return weeks;
}

/**
 * The split of the weeks with the largest fall, where every later week stays at least 0.8 K below the typical week
 * before and the two weeks before the fall stood at least 0.8 K above the typical week after.
 */
function lastingStepDown(
  grid: Grid,
  setpointC: Float64Array,
  occupied: Uint8Array,
  weeks: readonly WeekMedian[],
): SetpointStep | null {
  let best: { week: number; beforeC: number; afterC: number } | null = null;
  for (let k = WEEKS_EACH_SIDE; k <= weeks.length - WEEKS_EACH_SIDE; k++) {
    const before = weeks.slice(0, k).map((each) => each.medianC);
    const after = weeks.slice(k).map((each) => each.medianC);
    const beforeC = median(before);
    const afterC = median(after);
    const stays = after.every((each) => each <= beforeC - STEP_K);
    const stood = before.slice(-WEEKS_EACH_SIDE).every((each) => each >= afterC + STEP_K);
    if (stays && stood && (!best || beforeC - afterC > best.beforeC - best.afterC)) best = { week: k, beforeC, afterC };
  }
  if (!best) return null;

  const middleC = (best.beforeC + best.afterC) / 2;
  const firstWeek = weeks[best.week - 1] as WeekMedian;
  const from = Math.round((firstWeek.startUtcSeconds - grid.startUtcSeconds) / grid.stepSeconds);
  // The fall lies in the week before the first low one or at its start: the last occupied interval above the middle tells.
  const end = Math.min(grid.count, from + Math.round((2 * WEEK_SECONDS) / grid.stepSeconds));
  let at = from;
  for (let i = from; i < end; i++) {
    if (occupied[i] === 1 && (setpointC[i] as number) > middleC) at = i + 1;
  }
  while (at < end && !(occupied[at] === 1 && (setpointC[at] as number) <= middleC)) at++;
  return {
    atUtcSeconds: grid.startUtcSeconds + Math.min(at, grid.count - 1) * grid.stepSeconds,
    beforeC: best.beforeC,
    afterC: best.afterC,
  };
}
