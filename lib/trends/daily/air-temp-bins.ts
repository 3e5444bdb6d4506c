import { stepHours } from "../grid";
import type { ZoneStates } from "../state";
import type { ZoneGrids } from "../zone-grids";
import { OCCUPIED_STATES, type OccupiedState } from "../zone-state";

/** Hours by state with zone air in `[lowC, lowC + 1)`. */
export type AirTempBin = { lowC: number; hours: Record<OccupiedState, number> };

/**
 * Counted hours of a zone by state and by zone air temperature in bins of 1 K, coldest first, without holes between.
 * `counted` marks the intervals that count, as in `dayExposures`; the bins add up to the counted hours with zone air.
 */
export function airTempBins(
  grids: Pick<ZoneGrids, "grid" | "zoneAirTempC">,
  states: Pick<ZoneStates, "codes">,
  counted: Uint8Array,
): AirTempBin[] {
  const { grid, zoneAirTempC } = grids;
  const hoursEach = stepHours(grid);
  const bins = new Map<number, Float64Array>();
  for (let i = 0; i < grid.count; i++) {
    const code = states.codes[i] as number;
    const lowC = Math.floor(zoneAirTempC[i] as number);
    if (counted[i] !== 1 || code >= OCCUPIED_STATES.length || Number.isNaN(lowC)) continue;
    const bin = bins.get(lowC) ?? new Float64Array(OCCUPIED_STATES.length);
    bins.set(lowC, bin);
    bin[code] = (bin[code] as number) + hoursEach;
  }
  if (bins.size === 0) return [];
  const lows = [...bins.keys()];
  const lowest = Math.min(...lows);
  return Array.from({ length: Math.max(...lows) - lowest + 1 }, (_, k) => ({
    lowC: lowest + k,
    hours: Object.fromEntries(
      OCCUPIED_STATES.map((state, code) => [state, bins.get(lowest + k)?.[code] ?? 0]),
    ) as AirTempBin["hours"],
  }));
}
