import type { BuildingRow } from "@/db/queries/buildings";
import { countDesksByZone, listZones, type ZoneRow } from "@/db/queries/zones";
import type { Wandering } from "@/lib/comfort-reports/level-crossing";
import { wanderingOf } from "@/lib/comfort-reports/wandering";
import { coolingSeasonMask } from "@/lib/trends/cooling-season";
import type { PointKind } from "@/lib/trends/point-kind";
import type { PointSeries } from "@/lib/trends/samples";
import { zoneGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";
import { type BuildingRecord, readSeries } from "../zone-analysis/building-record";

/** The cooling season is judged by votes of summer, all other time by those of winter. */
export type VoteSeason = "summer" | "winter";

/** Occupied desk-hours by whole degree of zone air, as [°C, h]. */
export type DeskHours = Record<VoteSeason, [airTempC: number, hours: number][]>;

export type ZoneDeskHours = {
  zoneId: number;
  code: string;
  floor: string;
  /** Since the building's first report: what reports are held against. */
  sinceReports: DeskHours;
  /** Of the last 365 days of the record: what a year is taken to be. */
  lastYear: DeskHours;
  /** Occupied hours of that year's cooling season; null with too few. */
  summerAir: Wandering | null;
};

const YEAR_SECONDS = 365 * 86_400;

/** Occupied desk-hours of every zone that has desks and zone air; the others by their codes. */
export async function deskHoursByZone(
  ctx: Context,
  building: BuildingRow,
  record: BuildingRecord,
  { firstReportSeconds, thresholdC }: { firstReportSeconds: number; thresholdC: number },
): Promise<{ zones: ZoneDeskHours[]; without: string[] }> {
  const desks = countDesksByZone(ctx.db, building.id);
  const zones: ZoneDeskHours[] = [];
  const without: string[] = [];
  for (const zone of listZones(ctx.db, building.id)) {
    const count = desks.get(zone.id) ?? 0;
    const found = count > 0 ? await hoursOf(ctx, record, zone, { count, firstReportSeconds, thresholdC }) : null;
    if (found) zones.push(found);
    else without.push(zone.code);
  }
  return { zones, without };
}

async function hoursOf(
  ctx: Context,
  record: BuildingRecord,
  zone: ZoneRow,
  { count, firstReportSeconds, thresholdC }: { count: number; firstReportSeconds: number; thresholdC: number },
): Promise<ZoneDeskHours | null> {
  const points = record.points.filter(({ zoneId }) => zoneId === zone.id);
  const read = await readSeries(ctx, points, record.grids.grid);
  const series: Partial<Record<PointKind, PointSeries>> = {};
  for (const point of points) series[point.kind] ??= read.get(point.id);
  if (!series["zone-air-temp"]) return null;
  const { grids } = zoneGrids(record.grids, series);
  const season = coolingSeasonMask(grids, thresholdC);
  const { startUtcSeconds, stepSeconds, count: steps } = grids.grid;
  const tally = () => ({ summer: new Map<number, number>(), winter: new Map<number, number>() });
  const [since, year] = [tally(), tally()];
  const hours = (count * stepSeconds) / 3600;
  const stepsAnHour = Math.round(3600 / stepSeconds);
  const summerHours = new Float64Array(Math.ceil(steps / stepsAnHour)).fill(Number.NaN);
  for (let i = 0; i < steps; i++) {
    const airTempC = grids.zoneAirTempC[i] as number;
    if (!grids.occupied[i] || Number.isNaN(airTempC)) continue;
    const at = startUtcSeconds + i * stepSeconds;
    const bin = Math.round(airTempC);
    const name = season[i] ? "summer" : "winter";
    if (at >= firstReportSeconds) since[name].set(bin, (since[name].get(bin) ?? 0) + hours);
    if (at < record.toUtcSeconds - YEAR_SECONDS) continue;
    if (season[i] && i % stepsAnHour === 0)
      summerHours[i / stepsAnHour] = meanOver(grids.zoneAirTempC, i, i + stepsAnHour);
    year[name].set(bin, (year[name].get(bin) ?? 0) + hours);
  }
  const sorted = (map: Map<number, number>) => [...map].sort(([a], [b]) => a - b);
  const hoursBySeason = (each: typeof since): DeskHours => ({
    summer: sorted(each.summer),
    winter: sorted(each.winter),
  });
  return {
    zoneId: zone.id,
    code: zone.code,
    floor: zone.floor ?? "",
    sinceReports: hoursBySeason(since),
    lastYear: hoursBySeason(year),
    summerAir: wanderingOf(summerHours),
  };
}

/** NaN unless all are known. */
function meanOver(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i] ?? Number.NaN;
  return sum / (to - from);
}
