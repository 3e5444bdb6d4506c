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
  const of = (wanted: number): AirAtMinimum | null => {
    const counts = (i: number): boolean => season[i] === 1 && states.codes[i] === wanted;
    const mean = (values: Float64Array | null): number | null => {
      let [sum, count] = [0, 0];
      if (values)
        for (let i = 0; i < values.length; i++) {
          const value = values[i] as number;
          if (!counts(i) || Number.isNaN(value)) continue;
          sum += value;
          count++;
        }
      return count > 0 ? sum / count : null;
    };
    const zoneAirTempC = mean(grids.zoneAirTempC);
    if (zoneAirTempC === null) return null;
    let intervals = 0;
    for (let i = 0; i < season.length; i++) if (counts(i)) intervals++;
    return {
      hours: intervals * stepHours(grids.grid),
      zoneAirTempC,
      supplyAirTempC: mean(grids.supplyAirTempC),
      dischargeAirTempC: mean(grids.dischargeAirTempC),
      heatingSetpointC: mean(grids.heatingSetpointC),
    };
  };
  // A unit that serves its zone alone has no minimum airflow.
  if (grids.coolingStage) return { deadband: null, reheat: null };
  return { deadband: of(DEADBAND), reheat: of(REHEAT) };
}
