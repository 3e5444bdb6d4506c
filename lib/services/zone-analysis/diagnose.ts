import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { countDesksByZone, listDesks, listZones } from "@/db/queries/zones";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import type { ReportEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import { type AirAtReport, airAtReports } from "../comfort-reports/air-at-reports";
import type { Context } from "../context";
import { groupBy } from "../group-by";
import type { BuildingAnalysis } from "./read";

const YEAR_SECONDS = 365.25 * 86_400;

/** What keeps each zone cold or hot, by zone id. Zones without a record have no diagnosis. */
export async function diagnoseZones(
  ctx: Context,
  building: BuildingRow,
  { zones: analyses, record }: BuildingAnalysis,
  seasonThresholdC: number,
): Promise<Map<number, ZoneDiagnosis>> {
  if (!record) return new Map();
  const codes = new Map(listZones(ctx.db, building.id).map((zone) => [zone.id, zone.code]));
  const { byZone: reports, years: reportYears } = await reportEvidence(ctx, building.id, record, seasonThresholdC);
  const desks = countDesksByZone(ctx.db, building.id);
  const heaters = groupBy(
    listDevices(ctx.db, building.id).filter((device) => device.kind === "space-heater" && device.retiredOn === null),
    (device) => device.zoneId,
  );
  const statistics = analyses.map((analysis) => analysis.statistics);
  return new Map(
    analyses.map((analysis) => [
      analysis.zoneId,
      diagnoseZone({
        zoneCode: codes.get(analysis.zoneId) ?? "",
        exposure: analysis.exposure,
        statistics: analysis.statistics,
        reports: reports.get(analysis.zoneId) ?? [],
        deskCount: desks.get(analysis.zoneId) ?? 0,
        reportYears,
        neighbours: neighbourEvidence(analysis.zoneId, statistics),
        offset: analysis.offset,
        limits: analysis.limits,
        minimumAirflowOrigin: analysis.minimumAirflowOrigin,
        heaterCount: heaters.get(analysis.zoneId)?.length ?? 0,
      }),
    ]),
  );
}

/**
 * Reports made during the record with the zone air of their moment, by zone id, and the years from the building's first
 * report of the record to its end.
 */
async function reportEvidence(
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
      thermalSensation: report.thermalSensation,
      preference: report.preference,
      ...(air[i] as AirAtReport),
    });
    found.set(report.zoneId, list);
  });
  const first = Math.min(...reports.map(({ reportedAtMs }) => reportedAtMs / 1000), record.toUtcSeconds);
  return { byZone: found, years: (record.toUtcSeconds - first) / YEAR_SECONDS };
}
