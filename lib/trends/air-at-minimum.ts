import { stepHours } from "./grid";
import type { ZoneStates } from "./state";
import { DEADBAND, REHEAT } from "./state-code";
import type { ZoneGrids } from "./zone-grids";

/** Means over the occupied cooling-season hours of one state at minimum airflow; null where a point is not recorded. */
export type AirAtMinimum = {
  hours: number;
  zoneAirTempC: number;
  supplyAirTempC: number | null;
  dischargeAirTempC: number | null;
  heatingSetpointC: number | null;
};

/** What a zone's air was while the box gave its minimum, between the setpoints and in reheat. Null for a state without hours. */
export function airAtMinimum(
  grids: ZoneGrids,
  states: ZoneStates,
  season: Uint8Array,
): { deadband: AirAtMinimum | null; reheat: AirAtMinimum | null } {
  // A unit that serves its zone alone has no minimum airflow.
  if (grids.coolingStage) return { deadband: null, reheat: null };
  const of = (state: number): AirAtMinimum | null => {
    const intervals = intervalsOf(states, season, state);
    const zoneAirTempC = meanOver(grids.zoneAirTempC, intervals);
    if (zoneAirTempC === null) return null;
    return {
      hours: intervals.length * stepHours(grids.grid),
      zoneAirTempC,
      supplyAirTempC: meanOver(grids.supplyAirTempC, intervals),
      dischargeAirTempC: meanOver(grids.dischargeAirTempC, intervals),
      heatingSetpointC: meanOver(grids.heatingSetpointC, intervals),
    };
  };
  return { deadband: of(DEADBAND), reheat: of(REHEAT) };
}

function intervalsOf({ codes }: ZoneStates, season: Uint8Array, state: number): Uint32Array {
  const found = new Uint32Array(season.length);
  let count = 0;
  for (let i = 0; i < season.length; i++) if (season[i] === 1 && codes[i] === state) found[count++] = i;
  return found.subarray(0, count);
}

function meanOver(values: Float64Array | null, intervals: Uint32Array): number | null {
  if (!values) return null;
  let sum = 0;
  let count = 0;
  for (let k = 0; k < intervals.length; k++) {
    const value = values[intervals[k] as number] as number;
    if (Number.isNaN(value)) continue;
    sum += value;
    count++;
  }
  return count > 0 ? sum / count : null;
}
