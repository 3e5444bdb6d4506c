import type { BuildingRow } from "@/db/queries/buildings";
import { type ComfortReportRow, listComfortReports } from "@/db/queries/comfort";
import { listPoints } from "@/db/queries/points";
import { isCold } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";
import type { BuildingAnalysis } from "../zone-analysis/read";

const YEAR_SECONDS = 365 * 86_400;
/** Oldest reading that still says what the air was like when a report was made [s]. */
const READING_AGE_SECONDS = 1800;

/**
 * Cold reports of the last recorded year that came while the zone air was below the target, by zone id. They are
 * counted, not scaled up: a few weeks of reports are not made into a year. Without any record the cold reports of the
 * last year all count.
 */
export async function coldReportsPerYear(
  ctx: Context,
  building: BuildingRow,
  { record }: BuildingAnalysis,
): Promise<Map<number, number>> {
  const until = record ? record.toUtcSeconds : Math.floor(ctx.now / 1000) + 1;
  const cold = listComfortReports(ctx.db, building.id, (until - YEAR_SECONDS) * 1000).filter(
    (report) => report.reportedAtMs / 1000 < until && isCold({ ...report, desk: null, zoneAirTempC: null }),
  );
  const counted = record ? await belowTarget(ctx, building, cold) : cold;
  const counts = new Map<number, number>();
  for (const { zoneId } of counted) counts.set(zoneId, (counts.get(zoneId) ?? 0) + 1);
  return counts;
}

async function belowTarget(
  ctx: Context,
  building: BuildingRow,
  reports: readonly ComfortReportRow[],
): Promise<ComfortReportRow[]> {
  const air = new Map(
    listPoints(ctx.db, building.id).flatMap((point) =>
      point.kind === "zone-air-temp" && point.zoneId !== null ? [[point.zoneId, point.id] as const] : [],
    ),
  );
  const readings = await ctx.trends.asOf(
    reports.map(({ zoneId, reportedAtMs }) => ({
      series: air.get(zoneId) ?? 0,
      ts: Math.floor(reportedAtMs / 1000),
      maxAgeSeconds: READING_AGE_SECONDS,
    })),
  );
  return reports.filter((_, i) => {
    const reading = readings[i];
    return reading !== null && reading !== undefined && reading.value < building.targetZoneAirTempC;
  });
}
