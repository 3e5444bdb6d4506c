import type { ZoneRow } from "@/db/queries/zones";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import type { HeatedZone } from "@/lib/trends/heater-jumps";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";
import type { AnalysisTarget, ZoneAnalysis } from "./analyse-zone";
import { type BuildingRecord, readSeries } from "./building-record";
import { heaterPower } from "./heater-power";

/** The points that place a zone beside its neighbours. */
const KINDS: readonly PointKind[] = ["zone-air-temp", "airflow", "occupancy", "heater-power", "outdoor-air-temp"];

/** A zone that was analysed before, as its neighbours are compared with it: only the points that this takes are read. */
export async function readGroupedZone(
  ctx: Context,
  record: BuildingRecord,
  zone: ZoneRow,
  known: { analysis: Pick<ZoneAnalysis, "limits">; target: AnalysisTarget },
): Promise<HeatedZone> {
  const points = record.points.filter((point) => point.zoneId === zone.id && KINDS.includes(point.kind));
  const read = await readSeries(ctx, points, record.grids.grid);
  const series: Partial<Record<PointKind, PointSeries>> = {};
  for (const point of points) series[point.kind] ??= read.get(point.id);
  const { grids } = zoneGrids(record.grids, series);
  const { grid, occupied, zoneAirTempC, airflowM3ps } = grids;
  return {
    zoneId: zone.id,
    floor: zone.floor,
    grids: { grid, occupied, zoneAirTempC, airflowM3ps },
    season: coolingSeasonMask(grids, known.target.seasonThresholdC),
    heaterPowerW: heaterPower(points, read, grid),
    minimumAirflowM3ps: known.analysis.limits.minimumAirflowM3ps,
  };
}
