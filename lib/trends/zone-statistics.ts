import { type RuleHours, ruleHours } from "./rule-hours";
import { type SetpointHistory, setpointHistory } from "./setpoint-history";
import type { AirflowLimits, ZoneStates } from "./state";
import { weekHourMeans } from "./week-hour-means";
import type { ZoneGrids } from "./zone-grids";

/** What a diagnosis needs of a zone's trends beside the exposure: plain numbers, worked out once and fit to be stored. */
export type ZoneStatistics = {
  zoneId: number;
  coolingSetpoint: SetpointHistory | null;
  heatingSetpoint: SetpointHistory | null;
  /** Unoccupied less occupied median of the cooling setpoint [K]; about 0 where no setback happens. */
  coolingSetbackK: number | null;
  rules: RuleHours;
  /** Mean zone air [°C] by wall-clock hour of the week, Monday first. */
  weekHourMeansC: (number | null)[][];
};

/** `weekHours` is `localWeekHours` of the grid; `damperMinimumPct` the one the states were made with. */
export function zoneStatistics(input: {
  zoneId: number;
  grids: ZoneGrids;
  states: ZoneStates;
  limits: AirflowLimits;
  weekHours: Uint8Array;
  targetZoneAirTempC: number;
  seasonThresholdC: number;
  damperMinimumPct?: number;
}): ZoneStatistics {
  const { grids } = input;
  const history = (setpointC: Float64Array | null): SetpointHistory | null => {
    const made = setpointC ? setpointHistory(grids.grid, setpointC, grids.occupied) : null;
    return made && made.occupiedMedianC === null && made.unoccupiedMedianC === null ? null : made;
  };
  const coolingSetpoint = history(grids.coolingSetpointC);
  const during = coolingSetpoint?.occupiedMedianC ?? null;
  const outside = coolingSetpoint?.unoccupiedMedianC ?? null;
  return {
    zoneId: input.zoneId,
    coolingSetpoint,
    heatingSetpoint: history(grids.heatingSetpointC),
    coolingSetbackK: during === null || outside === null ? null : outside - during,
    rules: ruleHours(input),
    weekHourMeansC: weekHourMeans(grids.zoneAirTempC, input.weekHours),
  };
}
