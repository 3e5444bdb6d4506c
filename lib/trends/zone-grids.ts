import type { Finding } from "@/lib/findings/finding";
import { DEFAULT_STEP_SECONDS, type Grid, stepHours } from "./grid";
import { type OccupiedSource, occupiedIntervals } from "./occupied";
import type { PointKind } from "./point-kind";
import { resample, resampleState } from "./resample";
import { type PointSeries, usualStepSeconds } from "./samples";

/**
 * All points of one zone on one grid. A missing point is null; a missing interval of a recorded point is NaN.
 * `supplyAirTempC` and `outdoorAirTempC` are the air handler's and the building's.
 */
export type ZoneGrids = {
  grid: Grid;
  occupied: Uint8Array;
  zoneAirTempC: Float64Array;
  coolingSetpointC: Float64Array | null;
  heatingSetpointC: Float64Array | null;
  airflowM3ps: Float64Array | null;
  airflowSetpointM3ps: Float64Array | null;
  damperPct: Float64Array | null;
  reheatValvePct: Float64Array | null;
  dischargeAirTempC: Float64Array | null;
  /** Share of the interval in which the unit of this zone alone cools, 0 to 1. */
  coolingStage: Float64Array | null;
  /** Of the zone, else of the building's return air. */
  relativeHumidityPct: Float64Array | null;
  supplyAirTempC: Float64Array | null;
  outdoorAirTempC: Float64Array | null;
};

/** What a building's zones share on the grid: made once, used for every zone. */
export type BuildingGrids = {
  grid: Grid;
  /** `occupiedMask` of lib/time on the grid. */
  scheduleMask: Uint8Array;
  outdoorAirTempC: Float64Array | null;
  supplyAirTempC: Float64Array | null;
  relativeHumidityPct: Float64Array | null;
};

export type ZoneGridsResult = {
  grids: ZoneGrids;
  occupiedSource: OccupiedSource;
  findings: Finding[];
};

/** Puts the recorded points of one zone on the building's grid and says what had to be settled on the way. */
export function zoneGrids(building: BuildingGrids, series: Partial<Record<PointKind, PointSeries>>): ZoneGridsResult {
  const { grid } = building;
  const findings: Finding[] = [];
  const onGrid = (kind: PointKind): Float64Array | null => {
    const each = series[kind];
    if (!each || each.samples.ts.length === 0) return null;
    const usual = usualStepSeconds(each.samples.ts);
    if (each.sampling === "interval" && usual !== null && usual > Math.max(grid.stepSeconds, DEFAULT_STEP_SECONDS)) {
      findings.push({
        code: "coarse-samples",
        severity: "caution",
        evidence: { point: kind, stepMinutes: usual / 60 },
      });
    }
    return resample(each, grid);
  };

  const occupancy = series.occupancy;
  const { mask, source, fromTrend } = occupiedIntervals(
    building.scheduleMask,
    occupancy && occupancy.samples.ts.length > 0 ? resampleState(occupancy, grid) : null,
  );
  findings.push({
    code: "occupied-hours-source",
    severity: "note",
    evidence: { source, trendHours: fromTrend * stepHours(grid), recordHours: grid.count * stepHours(grid) },
  });

  return {
    grids: {
      grid,
      occupied: mask,
      zoneAirTempC: onGrid("zone-air-temp") ?? new Float64Array(grid.count).fill(Number.NaN),
      coolingSetpointC: onGrid("cooling-setpoint"),
      heatingSetpointC: onGrid("heating-setpoint"),
      airflowM3ps: onGrid("airflow"),
      airflowSetpointM3ps: onGrid("airflow-setpoint"),
      damperPct: onGrid("damper-position"),
      reheatValvePct: onGrid("reheat-valve"),
      dischargeAirTempC: onGrid("discharge-air-temp"),
      coolingStage: onGrid("cooling-stage"),
      relativeHumidityPct: onGrid("relative-humidity") ?? building.relativeHumidityPct,
      supplyAirTempC: onGrid("supply-air-temp") ?? building.supplyAirTempC,
      outdoorAirTempC: onGrid("outdoor-air-temp") ?? building.outdoorAirTempC,
    },
    occupiedSource: source,
    findings,
  };
}
