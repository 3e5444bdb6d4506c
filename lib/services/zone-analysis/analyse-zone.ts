import type { PointRow } from "@/db/queries/points";
import type { ZoneRow } from "@/db/queries/zones";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { estimateMinimumAirflow } from "@/lib/trends/estimate-minimum-airflow";
import { zoneExposure } from "@/lib/trends/exposure";
import type { GroupOffset } from "@/lib/trends/group-offsets";
import type { HeatedZone, HeaterJumps } from "@/lib/trends/heater-jumps";
import { learnDamperMinimum } from "@/lib/trends/learn-damper-minimum";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { type AirflowLimits, zoneStates } from "@/lib/trends/state";
import type { ZoneExposure } from "@/lib/trends/zone-exposure";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { type ZoneStatistics, zoneStatistics } from "@/lib/trends/zone-statistics";
import type { Context } from "../context";
import { type BuildingRecord, readSeries } from "./building-record";
import { heaterPower } from "./heater-power";

export type MinimumAirflowOrigin = "entered" | "airflow-setpoint-trend" | "estimated";

/** What one zone's trends say: plain data, fit to be kept. */
export type ZoneAnalysis = {
  zoneId: number;
  exposure: ZoneExposure;
  statistics: ZoneStatistics;
  limits: AirflowLimits;
  minimumAirflowOrigin: MinimumAirflowOrigin | null;
  /** Set once all zones of the building are known. */
  offset: GroupOffset | null;
  heaterJumps: HeaterJumps | null;
};

export type AnalysisTarget = { targetZoneAirTempC: number; seasonThresholdC: number };

/** Reads a zone's points and works out states, exposure and statistics. Null when its air temperature is not recorded. */
export async function analyseZone(
  ctx: Context,
  record: BuildingRecord,
  zone: ZoneRow,
  target: AnalysisTarget,
): Promise<{ analysis: ZoneAnalysis; grouped: HeatedZone } | null> {
  const points = record.points.filter((point) => point.zoneId === zone.id);
  const read = await readSeries(ctx, points, record.grids.grid);
  const series = byKind(points, read);
  if (!series["zone-air-temp"]) return null;
  const { grids, occupiedSource, findings } = zoneGrids(record.grids, series);
  // A unit that serves the zone alone has no minimum airflow to look for.
  const estimate = zone.minimumAirflowM3ps === null && !grids.coolingStage ? estimateMinimumAirflow(grids) : null;
  const limits: AirflowLimits = {
    minimumAirflowM3ps: zone.minimumAirflowM3ps ?? (estimate?.status === "ok" ? estimate.minimumAirflowM3ps : null),
    designAirflowM3ps: zone.designAirflowM3ps,
  };
  const damperMinimumPct = learnDamperMinimum(grids, limits.minimumAirflowM3ps);
  const states = zoneStates(grids, limits, { damperMinimumPct });
  const exposure = zoneExposure({
    zoneId: zone.id,
    grids,
    states,
    ...target,
    occupiedSource,
    findings: estimate ? [...findings, estimate.finding] : findings,
  });
  const statistics = zoneStatistics({
    zoneId: zone.id,
    grids,
    states,
    limits,
    weekHours: record.weekHours,
    ...target,
    damperMinimumPct,
    coolingStage: series["cooling-stage"],
  });
  const origin = zone.minimumAirflowM3ps === null ? (estimate?.status === "ok" ? estimate.origin : null) : "entered";
  return {
    analysis: {
      zoneId: zone.id,
      exposure,
      statistics,
      limits,
      minimumAirflowOrigin: origin,
      offset: null,
      heaterJumps: null,
    },
    grouped: {
      zoneId: zone.id,
      floor: zone.floor,
      grids: {
        grid: grids.grid,
        occupied: grids.occupied,
        zoneAirTempC: grids.zoneAirTempC,
        airflowM3ps: grids.airflowM3ps,
      },
      season: coolingSeasonMask(grids, target.seasonThresholdC),
      heaterPowerW: heaterPower(points, read, grids.grid),
      minimumAirflowM3ps: limits.minimumAirflowM3ps,
    },
  };
}

/** One series a kind: of two points of one kind the first that holds samples. */
function byKind(
  points: readonly PointRow[],
  series: Map<number, PointSeries>,
): Partial<Record<PointKind, PointSeries>> {
  const found: Partial<Record<PointKind, PointSeries>> = {};
  for (const point of points) found[point.kind] ??= series.get(point.id);
  return found;
}
