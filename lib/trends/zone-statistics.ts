import { type AirAtMinimum, airAtMinimum } from "./air-at-minimum";
import { type CompressorRuns, compressorRuns } from "./compressor-runs";
import { coolingSeasonMask } from "./cooling-season";
import { type ReheatAirflow, reheatAirflow } from "./reheat-airflow";
import { type RuleHours, ruleHours } from "./rule-hours";
import type { PointSeries } from "./samples";
import { type SetpointHistory, setpointHistory } from "./setpoint-history";
import type { AirflowLimits, ZoneStates } from "./state";
import { type SupplyAirReset, supplyAirReset } from "./supply-air-reset";
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
  reheatAirflow: ReheatAirflow;
  supplyAir: SupplyAirReset | null;
  airAtMinimum: { deadband: AirAtMinimum | null; reheat: AirAtMinimum | null };
  /** Of a unit that serves the zone alone. */
  compressorRuns: CompressorRuns | null;
  /** Mean zone air [°C] by wall-clock hour of the week, Monday first. */
  weekHourMeansC: (number | null)[][];
};

/**
 * `weekHours` is `localWeekHours` of the grid; `damperMinimumPct` the one the states were made with; `coolingStage` the samples
 * as they came, since runs are shorter than an interval of the grid.
 */
export function zoneStatistics(input: {
  zoneId: number;
  grids: ZoneGrids;
  states: ZoneStates;
  limits: AirflowLimits;
  weekHours: Uint8Array;
  targetZoneAirTempC: number;
  seasonThresholdC: number;
  damperMinimumPct?: number;
  coolingStage?: PointSeries;
}): ZoneStatistics {
  const { grids, states, coolingStage } = input;
  const season = coolingSeasonMask(grids, input.seasonThresholdC);
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
    reheatAirflow: reheatAirflow(grids, season),
    supplyAir: supplyAirReset(grids, season),
    airAtMinimum: airAtMinimum(grids, states, season),
    compressorRuns: coolingStage ? compressorRuns(coolingStage, grids.grid, season) : null,
    weekHourMeansC: weekHourMeans(grids.zoneAirTempC, input.weekHours),
  };
}
