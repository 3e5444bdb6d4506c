import { median } from "@/lib/statistics/quantile";
import { type Grid, stepHours } from "../grid";

/** The occupied intervals of one day with a reading. */
export type OccupiedDay = {
  /** Place among the days. */
  day: number;
  firstUtcSeconds: number;
  hours: number;
  mean: number;
  median: number;
  /** Sum of max(0, target - reading) · dt [K·h]; 0 without a target. */
  belowTargetKh: number;
};

/** Occupied hours below which a day does not count: common practice, no source. */
const LEAST_HOURS = 2;

/** A trend by occupied day. `edges` are the first seconds of the days, one more than there are. */
export function occupiedDays(
  { grid, values, occupied }: { grid: Grid; values: Float64Array; occupied: Uint8Array },
  edges: Float64Array,
  target?: number,
): OccupiedDay[] {
  const found: OccupiedDay[] = [];
  for (let day = 0; day + 1 < edges.length; day++) {
    const from = Math.max(0, Math.ceil(((edges[day] as number) - grid.startUtcSeconds) / grid.stepSeconds));
    const until = Math.min(
      grid.count,
      Math.ceil(((edges[day + 1] as number) - grid.startUtcSeconds) / grid.stepSeconds),
    );
    const readings: number[] = [];
    let first = -1;
    for (let i = from; i < until; i++) {
      const value = values[i] as number;
      if (occupied[i] !== 1 || Number.isNaN(value)) continue;
      if (first < 0) first = i;
      readings.push(value);
    }
    const hours = readings.length * stepHours(grid);
    if (hours < LEAST_HOURS) continue;
    found.push({
      day,
      firstUtcSeconds: grid.startUtcSeconds + first * grid.stepSeconds,
      hours,
      mean: readings.reduce((sum, each) => sum + each, 0) / readings.length,
      median: median(readings),
      belowTargetKh:
        target === undefined
          ? 0
          : readings.reduce((sum, each) => sum + Math.max(0, target - each), 0) * stepHours(grid),
    });
  }
  return found;
}
