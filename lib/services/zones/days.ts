import type { BuildingRow } from "@/db/queries/buildings";
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
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { ResultKind } from "../kept/result-kind";
import { upToDate } from "../kept/work-out";
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

/** Every local day of a zone's record; the days add up to the zone's exposure. Empty without zone air. Its part is the zone's id. */
export const ZONE_DAYS: ResultKind<ZoneDay[]> = {
  name: "zone-days",
  version: 2,
  inputs: ["trends", "mapping", "zones", "building", "assumptions"],
  workOut: (ctx, building, part) => daysOfZone(ctx, building, Number(part)),
};

/** The same for one who waits: worked out here when it has to be. */
export async function readZoneDays(ctx: Context, buildingId: number, zoneId: number): Promise<ZoneDay[]> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  if (!findZone(ctx.db, buildingId, zoneId)) throw new ServiceError("not-found", "This zone does not exist.");
  return (await upToDate(ctx, building, ZONE_DAYS, String(zoneId))).result;
}

async function daysOfZone(ctx: Context, building: BuildingRow, zoneId: number): Promise<ZoneDay[]> {
  const thresholdC = seasonThresholdC(ctx, building.id);
  const { zones } = await readBuildingAnalysis(ctx, building, thresholdC);
  const analysis = zones.find((each) => each.zoneId === zoneId);
  const record = await buildingRecord(ctx, building);
  if (!analysis || !record) return [];
  return workOut(ctx, building, record, { analysis, thresholdC });
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
    targetZoneAirTempC: analysis.exposure.targetZoneAirTempC,
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
