import type { ZoneRow } from "@/db/queries/zones";
import type { GroupedZone } from "@/lib/trends/group-offsets";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";
import type { ZoneAnalysis } from "./analyse-zone";
import { type BuildingRecord, readSeries } from "./building-record";

/** The points that place a zone beside its neighbours. */
const KINDS: readonly PointKind[] = ["zone-air-temp", "airflow", "occupancy"];

/** A zone that was analysed before, as its neighbours are compared with it: only the points that this takes are read. */
export async function readGroupedZone(
  ctx: Context,
  record: BuildingRecord,
  zone: ZoneRow,
  { limits }: Pick<ZoneAnalysis, "limits">,
): Promise<GroupedZone> {
  const points = record.points.filter((point) => point.zoneId === zone.id && KINDS.includes(point.kind));
  const read = await readSeries(ctx, points, record.grids.grid);
  const series: Partial<Record<PointKind, PointSeries>> = {};
  for (const point of points) series[point.kind] ??= read.get(point.id);
  const { grid, occupied, zoneAirTempC, airflowM3ps } = zoneGrids(record.grids, series).grids;
  return {
    zoneId: zone.id,
    floor: zone.floor,
    grids: { grid, occupied, zoneAirTempC, airflowM3ps },
    minimumAirflowM3ps: limits.minimumAirflowM3ps,
  };
}
