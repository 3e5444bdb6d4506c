import { listComfortReports } from "@/db/queries/comfort";
import { listDesks } from "@/db/queries/zones";
import { isDeskDeleted } from "@/lib/comfort-reports/person-days";
import type { ReportEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { type AirAtReport, airAtReports } from "../comfort-reports/air-at-reports";
import type { Context } from "../context";
import type { BuildingAnalysis } from "./read";

const YEAR_SECONDS = 365.25 * 86_400;

/**
 * Reports made during the record with the zone air of their moment, by zone id, and the years from the building's first
 * report of the record to its end.
 */
export async function reportEvidence(
  ctx: Context,
  buildingId: number,
  record: NonNullable<BuildingAnalysis["record"]>,
  seasonThresholdC: number,
): Promise<{ byZone: Map<number, ReportEvidence[]>; years: number }> {
  const desks = new Map(listDesks(ctx.db, buildingId).map((desk) => [desk.id, desk.code]));
  const reports = listComfortReports(ctx.db, buildingId).filter(
    ({ reportedAtMs }) => reportedAtMs / 1000 >= record.fromUtcSeconds && reportedAtMs / 1000 < record.toUtcSeconds,
  );
  const air = await airAtReports(ctx, buildingId, reports, seasonThresholdC);
  const found = new Map<number, ReportEvidence[]>();
  reports.forEach((report, i) => {
    const list = found.get(report.zoneId) ?? [];
    list.push({
      desk: report.deskId === null ? null : (desks.get(report.deskId) ?? null),
      isDeskDeleted: isDeskDeleted(report),
      thermalSensation: report.thermalSensation,
      preference: report.preference,
      ...(air[i] as AirAtReport),
    });
    found.set(report.zoneId, list);
  });
  const first = Math.min(...reports.map(({ reportedAtMs }) => reportedAtMs / 1000), record.toUtcSeconds);
  return { byZone: found, years: (record.toUtcSeconds - first) / YEAR_SECONDS };
}
