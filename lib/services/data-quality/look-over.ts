import { setImmediate as nextTurn } from "node:timers/promises";
import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listPoints } from "@/db/queries/points";
import { listZones, type ZoneRow } from "@/db/queries/zones";
import { localDaysOver, offsetChanges } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import type { PointKind } from "@/lib/trends/point-kind";
import { type BuildingQuality, buildingQuality, type LookedOverZone } from "@/lib/trends/quality/building-quality";
import { localClock } from "@/lib/trends/quality/daily-profile";
import type { QualityPoint } from "@/lib/trends/quality/quality-point";
import { coverOfPoint, type PointCover, type QualityFrame, zoneQuality } from "@/lib/trends/quality/zone-quality";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { type BuildingRecord, buildingRecord, readSeries } from "../zone-analysis/building-record";

/** What the records of a building's zones and of its own points say of their quality; `record` is null without any zone air. */
export type LookedOver = BuildingQuality & {
  record: { fromUtcSeconds: number; toUtcSeconds: number } | null;
  buildingPoints: PointCover[];
};

/**
 * Looks over every point of a building once, zone by zone. Worked out anew only when trends, mapping, zones or occupied hours
 * change; gives the event loop a turn after each zone.
 */
export async function lookOverBuilding(
  ctx: Context,
  building: BuildingRow,
  seasonThresholdC: number,
): Promise<LookedOver> {
  const points = listPoints(ctx.db, building.id);
  const zones = listZones(ctx.db, building.id);
  const fingerprint = fingerprintOf({
    version: 1,
    seasonThresholdC,
    timeZone: building.timeZone,
    occupied: findOccupiedHours(ctx.db, building.id),
    zones: zones.map((zone) => zone.id),
    points: points.map((point) => [point.id, point.kind, point.zoneId, point.sampling, point.externalName]),
    revisions: await ctx.trends.rev(points.map((point) => point.id)),
  });
  const about = { buildingId: building.id, subject: "data-quality", fingerprint };
  return (await cached(ctx, about, () => lookOver(ctx, building, zones, seasonThresholdC))).result;
}

async function lookOver(
  ctx: Context,
  building: BuildingRow,
  zones: readonly ZoneRow[],
  seasonThresholdC: number,
): Promise<LookedOver> {
  const record = await buildingRecord(ctx, building);
  if (!record) return { record: null, zones: [], findings: [], buildingPoints: [] };
  const frame = qualityFrame(record, building.timeZone);
  const looked: LookedOverZone[] = [];
  for (const zone of zones) {
    const points = await zonePoints(ctx, record, zone.id);
    const { grids } = zoneGrids(record.grids, byKind(points));
    const parts = zoneQuality(points, grids, coolingSeasonMask(grids, seasonThresholdC), frame);
    looked.push({ zoneId: zone.id, parts, hourlyAirC: hourly(grids.zoneAirTempC, grids.grid.stepSeconds) });
    await nextTurn();
  }
  const own = await zonePoints(ctx, record, null);
  const { fromUtcSeconds, toUtcSeconds } = record;
  return {
    ...buildingQuality(looked, record.grids.grid.startUtcSeconds),
    record: { fromUtcSeconds, toUtcSeconds },
    buildingPoints: own.map((point) => coverOfPoint(point, frame)),
  };
}

/** What the zones share: the local days of the record, its clock and the clock changes in it. */
export function qualityFrame(record: BuildingRecord, timeZone: string): QualityFrame {
  const { fromUtcSeconds, toUtcSeconds } = record;
  const zone = zoneTable(timeZone);
  const { grid, scheduleMask } = record.grids;
  const clock = localClock(grid, zone.localFromUtc);
  const occupiedDays = new Set<number>();
  for (let i = 0; i < grid.count; i++) if (scheduleMask[i] === 1) occupiedDays.add(clock.day[i] as number);
  return {
    record: { fromUtcSeconds, toUtcSeconds },
    days: localDaysOver(zone, record),
    clock,
    changes: offsetChanges(zone, record),
    dayAt: (utcSeconds) => Math.floor(zone.localFromUtc(utcSeconds) / 86_400),
    // Without occupied hours no schedule is known: then every day is like another.
    countsDay: (day) => occupiedDays.size === 0 || occupiedDays.has(day),
  };
}

/** The points of a zone, or of the building itself, that hold samples, with them. */
export async function zonePoints(ctx: Context, record: BuildingRecord, zoneId: number | null): Promise<QualityPoint[]> {
  const points = record.points.filter((point) => point.zoneId === zoneId);
  const series = await readSeries(ctx, points, record.grids.grid);
  return points.flatMap(({ id, kind, externalName }) => {
    const found = series.get(id);
    return found ? { pointId: id, kind, name: externalName, series: found } : [];
  });
}

function byKind(points: readonly QualityPoint[]): Partial<Record<PointKind, PointSeries>> {
  const found: Partial<Record<PointKind, PointSeries>> = {};
  for (const { kind, series } of points) found[kind] ??= series;
  return found;
}

/** Every hour's first value of a grid: enough to see whether a zone moves. */
function hourly(values: Float64Array, stepSeconds: number): Float32Array {
  const stride = Math.max(1, Math.round(3600 / stepSeconds));
  return Float32Array.from({ length: Math.ceil(values.length / stride) }, (_, k) => values[k * stride] as number);
}
