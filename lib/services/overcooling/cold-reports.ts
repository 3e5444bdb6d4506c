import type { BuildingRow } from "@/db/queries/buildings";
import { type ComfortReportRow, listComfortReports } from "@/db/queries/comfort";
import { listPoints } from "@/db/queries/points";
import { listZones } from "@/db/queries/zones";
import { isCold } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";
import type { BuildingAnalysis } from "../zone-analysis/read";

const YEAR_SECONDS = 365 * 86_400;
/** Oldest reading that still says what the air was like when a report was made [s]. */
const READING_AGE_SECONDS = 1800;

/**
 * Cold reports of the last recorded year that came in overcooled hours, by zone id: zone air below the target, and
 * outdoor air at or above the cooling season's threshold where it is trended. They are counted, not scaled up: a few
 * weeks of reports are not made into a year. Without any record the cold reports of the last year all count.
 */
export async function coldReportsPerYear(
  ctx: Context,
  building: BuildingRow,
  { record }: BuildingAnalysis,
  seasonThresholdC: number,
): Promise<Map<number, number>> {
  const until = record ? record.toUtcSeconds : Math.floor(ctx.now / 1000) + 1;
  const cold = listComfortReports(ctx.db, building.id, (until - YEAR_SECONDS) * 1000).filter(
    (report) => report.reportedAtMs / 1000 < until && isCold({ ...report, desk: null, zoneAirTempC: null }),
  );
  const counted = record ? await inOvercooledHours(ctx, building, cold, seasonThresholdC) : cold;
  const counts = new Map<number, number>();
  for (const { zoneId } of counted) counts.set(zoneId, (counts.get(zoneId) ?? 0) + 1);
  return counts;
}

async function inOvercooledHours(
  ctx: Context,
  building: BuildingRow,
  reports: readonly ComfortReportRow[],
  seasonThresholdC: number,
): Promise<ComfortReportRow[]> {
  const points = listPoints(ctx.db, building.id);
  const air = new Map(
    points.flatMap((point) =>
      point.kind === "zone-air-temp" && point.zoneId !== null ? [[point.zoneId, point.id] as const] : [],
    ),
  );
  const outdoorPoint = points.find((point) => point.kind === "outdoor-air-temp" && point.zoneId === null);
  const at = (seriesOf: (report: ComfortReportRow) => number) =>
    ctx.trends.asOf(
      reports.map((report) => ({
        series: seriesOf(report),
        ts: Math.floor(report.reportedAtMs / 1000),
        maxAgeSeconds: READING_AGE_SECONDS,
      })),
    );
  const zoneAir = await at((report) => air.get(report.zoneId) ?? 0);
  const targets = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone.targetZoneAirTempC]));
  const outdoor = outdoorPoint ? await at(() => outdoorPoint.id) : null;
  return reports.filter((report, i) => {
    const target = targets.get(report.zoneId) ?? building.targetZoneAirTempC;
    const cold = (zoneAir[i]?.value ?? Number.POSITIVE_INFINITY) < target;
    return cold && (outdoor === null || (outdoor[i]?.value ?? Number.NEGATIVE_INFINITY) >= seasonThresholdC);
  });
}
