import { listZoneReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { listPoints, listZonePoints } from "@/db/queries/points";
import { findZone, listDesks, type ZoneRow } from "@/db/queries/zones";
import { dayNumberFromLocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";
import { localDateAt } from "@/lib/time/local-date";
import { zoneTable } from "@/lib/time/zone-table";
import { type ChartPoint, downsample } from "@/lib/trends/downsample";
import { gridOver } from "@/lib/trends/grid";
import { resample } from "@/lib/trends/resample";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { readSeries, recordPeriod } from "../zone-analysis/building-record";
import { type ComfortBand, comfortBand } from "./comfort-band";
import { seasonThresholdC } from "./overview";

/** Widest picture that is drawn, in pixels: samples are thinned to two a pixel, peaks kept. */
const CHART_PIXELS = 1100;

export type ZoneReport = { utcSeconds: number; vote: number; desk: string | null; note: string };

export type ZonePeriod = { from: string; days: number };

/** A zone's temperatures over a period with the reports and devices that belong to it. Times are UTC seconds. */
export type ZoneHistory = {
  zone: ZoneRow;
  /** Recorded days of the building, or null when nothing is recorded. */
  recorded: { first: string; last: string } | null;
  period: ZonePeriod;
  fromUtcSeconds: number;
  toUtcSeconds: number;
  zoneAir: ChartPoint[];
  coolingSetpoint: ChartPoint[];
  heatingSetpoint: ChartPoint[];
  airflow: ChartPoint[];
  comfortBand: ComfortBand;
  reports: ZoneReport[];
  /** Day of the zone's newest report, in the period or not; null without any. */
  newestReportOn: string | null;
  /** Devices of the zone that were in use during the period, by the day they were found. */
  devices: { id: number; label: string; kind: string; foundUtcSeconds: number }[];
};

/** Reads a zone's history. Without a period: the last fourteen recorded days. */
export async function readZoneHistory(
  ctx: Context,
  buildingId: number,
  zoneId: number,
  wanted: Partial<ZonePeriod> = {},
): Promise<ZoneHistory> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const zone = findZone(ctx.db, buildingId, zoneId);
  if (!zone) throw new ServiceError("not-found", "This zone does not exist.");
  const record = await recordPeriod(ctx, listPoints(ctx.db, buildingId));
  const end = record ? record.toUtcSeconds : Math.floor(ctx.now / 1000);
  const lastDay = dayNumberFromLocalDate(localDateAt((end - 1) * 1000, building.timeZone)) as number;
  const days = Math.min(400, Math.max(1, Math.round(wanted.days ?? 14)));
  const firstDay = (wanted.from ? dayNumberFromLocalDate(wanted.from) : null) ?? lastDay - days + 1;
  const table = zoneTable(building.timeZone);
  const startOf = (day: number) => instantOf(table.utcFromLocal(day * 86_400));
  const grid = gridOver({ fromUtcSeconds: startOf(firstDay), toUtcSeconds: startOf(firstDay + days) });
  const points = record ? listZonePoints(ctx.db, zoneId) : [];
  const series = await readSeries(ctx, points, grid);
  const line = (kind: string): ChartPoint[] => {
    const point = points.find((each) => each.kind === kind && series.has(each.id));
    const found = point && series.get(point.id);
    return found ? downsample({ ...grid, values: resample(found, grid) }, CHART_PIXELS) : [];
  };
  const until = grid.startUtcSeconds + grid.count * grid.stepSeconds;
  const reports = reportsOf(ctx, buildingId, zoneId);
  const newest = reports.length > 0 ? Math.max(...reports.map((report) => report.utcSeconds)) : null;
  return {
    zone,
    recorded: record && {
      first: localDateAt(record.fromUtcSeconds * 1000, building.timeZone),
      last: localDateFromDayNumber(lastDay),
    },
    period: { from: localDateFromDayNumber(firstDay), days },
    fromUtcSeconds: grid.startUtcSeconds,
    toUtcSeconds: until,
    zoneAir: line("zone-air-temp"),
    coolingSetpoint: line("cooling-setpoint"),
    heatingSetpoint: line("heating-setpoint"),
    airflow: line("airflow"),
    comfortBand: record
      ? await comfortBand(ctx, {
          points: listPoints(ctx.db, buildingId),
          grid,
          table,
          thresholdC: seasonThresholdC(ctx, buildingId),
        })
      : [],
    reports: reports.filter(({ utcSeconds }) => utcSeconds >= grid.startUtcSeconds && utcSeconds < until),
    newestReportOn: newest === null ? null : localDateAt(newest * 1000, building.timeZone),
    devices: listDevices(ctx.db, buildingId)
      .filter((device) => device.zoneId === zoneId && device.retiredOn === null)
      .map(({ id, label, kind, foundOn }) => ({
        id,
        label,
        kind,
        foundUtcSeconds: startOf(dayNumberFromLocalDate(foundOn) ?? 0) + 12 * 3600,
      })),
  };
}

function reportsOf(ctx: Context, buildingId: number, zoneId: number): ZoneReport[] {
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  return listZoneReports(ctx.db, zoneId).map((report) => ({
    utcSeconds: Math.floor(report.reportedAtMs / 1000),
    vote: report.thermalSensation,
    desk: report.deskId === null ? null : (desks.get(report.deskId) ?? null),
    note: report.note,
  }));
}

/** A local midnight as an instant: the first of two, or the end of a skipped hour. */
function instantOf(local: ReturnType<ReturnType<typeof zoneTable>["utcFromLocal"]>): number {
  if (local.status === "unique") return local.utcSeconds;
  return local.status === "repeated" ? local.firstUtcSeconds : local.shiftedUtcSeconds;
}
