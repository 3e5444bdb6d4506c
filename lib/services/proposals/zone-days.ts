import type { BuildingRow } from "@/db/queries/buildings";
import { listZones, type ZoneRow } from "@/db/queries/zones";
import { type LocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { localDaysOver } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { type OccupiedDay, occupiedDays } from "@/lib/trends/daily/occupied-days";
import type { PointKind } from "@/lib/trends/point-kind";
import { type ZoneGrids, zoneGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";
import { buildingRecord, readSeries } from "../zone-analysis/building-record";

/** Occupied days of one trend of one zone, with their dates. */
export type DatedDay = OccupiedDay & { date: LocalDate };
export type ZoneDaySeries = { zone: ZoneRow; days: DatedDay[] };

type Wanted = {
  /** The trend that is taken; occupancy is read besides. */
  kind: PointKind;
  of: (grids: ZoneGrids) => Float64Array | null;
  /** What degree-hours are counted against, by zone. */
  targetOf?: (zone: ZoneRow) => number;
};

/** A trend of zones by occupied day, with the outdoor air of the same days; null without any record. */
export async function readZoneDays(
  ctx: Context,
  building: BuildingRow,
  wanted: Wanted,
  zoneIds: readonly number[] | null,
): Promise<{ zones: ZoneDaySeries[]; outdoorC: Map<LocalDate, number> } | null> {
  const record = await buildingRecord(ctx, building);
  if (!record) return null;
  const local = localDaysOver(zoneTable(building.timeZone), record);
  const dated = (days: OccupiedDay[]): DatedDay[] =>
    days.map((each) => ({ ...each, date: localDateFromDayNumber(local.firstDay + each.day) }));
  const { grid, scheduleMask, outdoorAirTempC } = record.grids;
  const outdoor = outdoorAirTempC
    ? dated(occupiedDays({ grid, values: outdoorAirTempC, occupied: scheduleMask }, local.edges))
    : [];
  const zones: ZoneDaySeries[] = [];
  for (const zone of listZones(ctx.db, building.id)) {
    if (zoneIds && !zoneIds.includes(zone.id)) continue;
    const points = record.points.filter(
      (point) =>
        point.zoneId === zone.id && (point.kind === wanted.kind || ["occupancy", "zone-air-temp"].includes(point.kind)),
    );
    const read = await readSeries(ctx, points, grid);
    const series: Parameters<typeof zoneGrids>[1] = {};
    for (const point of points) series[point.kind] ??= read.get(point.id);
    if (!series["zone-air-temp"]) continue;
    const { grids } = zoneGrids(record.grids, series);
    const values = wanted.of(grids);
    if (!values) continue;
    const days = occupiedDays({ grid, values, occupied: grids.occupied }, local.edges, wanted.targetOf?.(zone));
    zones.push({ zone, days: dated(days) });
  }
  return { zones, outdoorC: new Map(outdoor.map((each) => [each.date, each.mean])) };
}
