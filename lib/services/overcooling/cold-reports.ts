import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { listZones } from "@/db/queries/zones";
import { isCold } from "@/lib/trends/diagnosis/report-counts";
import { airAtReports } from "../comfort-reports/air-at-reports";
import type { Context } from "../context";
import type { BuildingAnalysis } from "../zone-analysis/read";

const YEAR_SECONDS = 365 * 86_400;

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
  const air = record ? await airAtReports(ctx, building.id, cold, seasonThresholdC) : null;
  const targets = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone.targetZoneAirTempC]));
  const counted = cold.filter((report, i) => {
    const then = air?.[i];
    if (!then) return true;
    const target = targets.get(report.zoneId) ?? building.targetZoneAirTempC;
    return then.inCoolingSeason && (then.zoneAirTempC ?? Number.POSITIVE_INFINITY) < target;
  });
  const counts = new Map<number, number>();
  for (const { zoneId } of counted) counts.set(zoneId, (counts.get(zoneId) ?? 0) + 1);
  return counts;
}
