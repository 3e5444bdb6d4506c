/** Where the occupied hours of a zone come from. */
export type OccupiedSource = "occupancy-trend" | "schedule" | "occupancy-trend-and-schedule";

export type OccupiedIntervals = {
  mask: Uint8Array;
  source: OccupiedSource;
  /** Intervals of the grid that the recorded occupancy decided. */
  fromTrend: number;
};

/**
 * Occupied mask of a zone: the recorded occupancy (0, 1 or NaN) where there is one, the building's schedule
 * elsewhere. `scheduleMask` is `occupiedMask` of lib/time on the same grid. The mask of the result is a fresh array.
 */
export function occupiedIntervals(scheduleMask: Uint8Array, occupancy: Float64Array | null): OccupiedIntervals {
  const mask = Uint8Array.from(scheduleMask);
  let fromTrend = 0;
  if (occupancy) {
    for (let i = 0; i < mask.length; i++) {
      const each = occupancy[i] as number;
      if (Number.isNaN(each)) continue;
      mask[i] = each >= 0.5 ? 1 : 0;
      fromTrend++;
    }
  }
  const source =
    fromTrend === 0 ? "schedule" : fromTrend === mask.length ? "occupancy-trend" : "occupancy-trend-and-schedule";
  return { mask, source, fromTrend };
}
