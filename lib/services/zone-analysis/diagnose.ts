import type { BuildingRow } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { listPoints } from "@/db/queries/points";
import { countDesksByZone, listDesks, listZones } from "@/db/queries/zones";
import { diagnoseZone, type ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { neighbourEvidence } from "@/lib/trends/diagnosis/neighbour-evidence";
import type { ReportEvidence } from "@/lib/trends/diagnosis/zone-evidence";
import type { Context } from "../context";
import { groupBy } from "../group-by";
import type { BuildingAnalysis } from "./read";

/** Oldest reading that still says what the air was like when a report was made [s]. */
const READING_AGE_SECONDS = 1800;

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
  const points = listPoints(ctx.db, buildingId);
  const air = new Map(
    points.flatMap((point) =>
      point.kind === "zone-air-temp" && point.zoneId !== null ? [[point.zoneId, point.id] as const] : [],
    ),
  );
  const reports = listComfortReports(ctx.db, buildingId).filter(
    ({ reportedAtMs }) => reportedAtMs / 1000 >= record.fromUtcSeconds && reportedAtMs / 1000 < record.toUtcSeconds,
  );
  const at = (series: number, { reportedAtMs }: { reportedAtMs: number }) => ({
    series,
    ts: Math.floor(reportedAtMs / 1000),
    maxAgeSeconds: READING_AGE_SECONDS,
  });
  const readings = await ctx.trends.asOf(reports.map((report) => at(air.get(report.zoneId) ?? 0, report)));
  const outdoor = points.find((point) => point.kind === "outdoor-air-temp" && point.zoneId === null);
  const [recorded] = outdoor ? await ctx.trends.extent([outdoor.id]) : [];
  const outdoors = outdoor && recorded ? await ctx.trends.asOf(reports.map((report) => at(outdoor.id, report))) : null;
  const found = new Map<number, ReportEvidence[]>();
  reports.forEach((report, i) => {
    const list = found.get(report.zoneId) ?? [];
    list.push({
      desk: report.deskId === null ? null : (desks.get(report.deskId) ?? null),
      thermalSensation: report.thermalSensation,
      preference: report.preference,
      zoneAirTempC: readings[i]?.value ?? null,
      // As for the hours: all are season without an outdoor trend, and a gap in it is left out.
      inCoolingSeason: outdoors === null || (outdoors[i]?.value ?? Number.NEGATIVE_INFINITY) >= seasonThresholdC,
    });
    found.set(report.zoneId, list);
  });
  const first = Math.min(...reports.map(({ reportedAtMs }) => reportedAtMs / 1000), record.toUtcSeconds);
  return { byZone: found, years: (record.toUtcSeconds - first) / YEAR_SECONDS };
}
