import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { findZone } from "@/db/queries/zones";
import type { LocalDate } from "@/lib/time/civil-date";
import { localDateOfDay, localDaysOver } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import { type DayExposure, dayExposures } from "@/lib/trends/daily/day-exposures";
import { type SpanMean, spanMeans } from "@/lib/trends/daily/span-means";
import { type SpanRange, spanRanges } from "@/lib/trends/daily/span-ranges";
import { learnDamperMinimum } from "@/lib/trends/learn-damper-minimum";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneStates } from "@/lib/trends/state";
import { zoneGrids } from "@/lib/trends/zone-grids";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { cached, fingerprintOf } from "../cached";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { ZoneAnalysis } from "../zone-analysis/analyse-zone";
import { type BuildingRecord, buildingRecord, readSeries } from "../zone-analysis/building-record";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "./overview";

/** One local day of a zone: its temperatures in °C, and its occupied cooling-season hours by state. */
export type ZoneDay = {
  date: LocalDate;
  zoneAir: SpanMean;
  zoneAirRange: SpanRange | null;
  coolingSetpointRange: SpanRange | null;
  heatingSetpointRange: SpanRange | null;
  exposure: DayExposure;
};

/**
 * Every local day of a zone's record; the days add up to the zone's exposure. Empty without zone air. Worked out anew only when
 * the zone's trends or what its states rest on change.
 */
export async function readZoneDays(ctx: Context, buildingId: number, zoneId: number): Promise<ZoneDay[]> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  if (!findZone(ctx.db, buildingId, zoneId)) throw new ServiceError("not-found", "This zone does not exist.");
  const thresholdC = seasonThresholdC(ctx, buildingId);
  const { zones } = await readBuildingAnalysis(ctx, building, thresholdC);
  const analysis = zones.find((each) => each.zoneId === zoneId);
  const record = await buildingRecord(ctx, building);
  if (!analysis || !record) return [];
  const points = record.points.filter((point) => point.zoneId === zoneId || point.zoneId === null);
  const fingerprint = fingerprintOf({
    version: 1,
    targetC: building.targetZoneAirTempC,
    thresholdC,
    timeZone: building.timeZone,
    occupied: findOccupiedHours(ctx.db, buildingId),
    limits: analysis.limits,
    record: [record.fromUtcSeconds, record.toUtcSeconds],
    points: points.map((point) => [point.id, point.kind, point.sampling]),
    revisions: await ctx.trends.rev(points.map((point) => point.id)),
  });
  const about = { buildingId, subject: `zone-days/${zoneId}`, fingerprint };
  return (await cached(ctx, about, () => workOut(ctx, building, record, { analysis, thresholdC }))).result;
}

async function workOut(
  ctx: Context,
  building: BuildingRow,
  record: BuildingRecord,
  { analysis, thresholdC }: { analysis: ZoneAnalysis; thresholdC: number },
): Promise<ZoneDay[]> {
  const points = record.points.filter((point) => point.zoneId === analysis.zoneId);
  const read = await readSeries(ctx, points, record.grids.grid);
  const series: Partial<Record<PointKind, PointSeries>> = {};
  for (const point of points) series[point.kind] ??= read.get(point.id);
  const { grids } = zoneGrids(record.grids, series);
  const { limits } = analysis;
  const damperMinimumPct = learnDamperMinimum(grids, limits.minimumAirflowM3ps);
  const days = localDaysOver(zoneTable(building.timeZone), record);
  const exposures = dayExposures({
    grids,
    states: zoneStates(grids, limits, { damperMinimumPct }),
    counted: coolingSeasonMask(grids, thresholdC),
    days,
    targetZoneAirTempC: building.targetZoneAirTempC,
  });
  const ranges = (kind: PointKind): (SpanRange | null)[] => {
    const found = series[kind];
    return found ? spanRanges(found, days.edges) : [];
  };
  const air = series["zone-air-temp"];
  const means = air ? spanMeans(air, days.edges) : [];
  const [airRanges, cooling, heating] = [
    ranges("zone-air-temp"),
    ranges("cooling-setpoint"),
    ranges("heating-setpoint"),
  ];
  return exposures.map((exposure, k) => ({
    date: localDateOfDay(days, k),
    zoneAir: means[k] ?? { value: null, coverage: 0, reason: "no-samples" },
    zoneAirRange: airRanges[k] ?? null,
    coolingSetpointRange: cooling[k] ?? null,
    heatingSetpointRange: heating[k] ?? null,
    exposure,
  }));
}
