import type { LocalDays } from "@/lib/time/local-days";
import { stepHours } from "../grid";
import type { ZoneStates } from "../state";
import type { ZoneGrids } from "../zone-grids";
import { OCCUPIED_STATES, type OccupiedState } from "../zone-state";

/** A zone's counted time on one local day by state, and its degree-hours below the target zone air temperature. */
export type DayExposure = { hours: Record<OccupiedState, number>; countedHours: number; overcoolingKh: number };

/**
 * Exposure of a zone day by day. `counted` marks the intervals that count: `coolingSeasonMask` for days that add up to
 * the zone's exposure, or the occupied mask for all occupied time; an interval without zone air never counts. An interval
 * belongs to the day in which it begins.
 */
export function dayExposures(input: {
  grids: Pick<ZoneGrids, "grid" | "zoneAirTempC">;
  states: Pick<ZoneStates, "codes">;
  counted: Uint8Array;
  days: LocalDays;
  targetZoneAirTempC: number;
}): DayExposure[] {
  const { grids, states, counted, days } = input;
  const { grid, zoneAirTempC } = grids;
  const hoursEach = stepHours(grid);
  const codes = OCCUPIED_STATES.length;
  const hours = new Float64Array(days.count * codes);
  const overcooling = new Float64Array(days.count);
  let day = 0;
  for (let i = 0; i < grid.count; i++) {
    const code = states.codes[i] as number;
    const zoneAir = zoneAirTempC[i] as number;
    if (counted[i] !== 1 || code >= codes || Number.isNaN(zoneAir)) continue;
    const at = grid.startUtcSeconds + i * grid.stepSeconds;
    if (at < (days.edges[0] as number)) continue;
    while (day < days.count && at >= (days.edges[day + 1] as number)) day++;
    if (day === days.count) break;
    hours[day * codes + code] = (hours[day * codes + code] as number) + hoursEach;
    overcooling[day] = (overcooling[day] as number) + Math.max(0, input.targetZoneAirTempC - zoneAir) * hoursEach;
  }
  return Array.from({ length: days.count }, (_, k) => {
    const own = hours.subarray(k * codes, (k + 1) * codes);
    return {
      hours: Object.fromEntries(
        OCCUPIED_STATES.map((state, code) => [state, own[code] as number]),
      ) as DayExposure["hours"],
      countedHours: own.reduce((sum, each) => sum + each, 0),
      overcoolingKh: overcooling[k] as number,
    };
  });
}
