import { listComfortReports } from "@/db/queries/comfort";
import { listDevices } from "@/db/queries/devices";
import { countDesksByZone, listZones, type ZoneRow } from "@/db/queries/zones";
import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { isCold, isHot } from "@/lib/trends/diagnosis/report-counts";
import { resolveAssumptions } from "../assumptions/resolve";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { groupBy } from "../group-by";
import type { ZoneAnalysis } from "../zone-analysis/analyse-zone";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { type BuildingAnalysis, readBuildingAnalysis } from "../zone-analysis/read";

/** A zone with all that is known of it, short. */
export type ZoneOverview = {
  zone: ZoneRow;
  desks: number;
  heaters: number;
  fans: number;
  coldReports: number;
  hotReports: number;
  analysis: ZoneAnalysis | null;
  diagnosis: ZoneDiagnosis | null;
};

export type ZonesOverview = { zones: ZoneOverview[]; record: BuildingAnalysis["record"] };

/** Every zone of a building: what its trends, devices and reports say. */
export async function readZonesOverview(ctx: Context, buildingId: number): Promise<ZonesOverview> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const thresholdC = seasonThresholdC(ctx, buildingId);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  const diagnoses = await diagnoseZones(ctx, building, analysis, thresholdC);
  const analyses = new Map(analysis.zones.map((each) => [each.zoneId, each]));
  const desks = countDesksByZone(ctx.db, buildingId);
  const devices = groupBy(
    listDevices(ctx.db, buildingId).filter((device) => device.retiredOn === null),
    (device) => device.zoneId,
  );
  const reports = groupBy(listComfortReports(ctx.db, buildingId), (report) => report.zoneId);
  const zones = listZones(ctx.db, buildingId).map((zone) => {
    const here = devices.get(zone.id) ?? [];
    const heaters = here.filter((device) => device.kind === "space-heater").length;
    const votes = (reports.get(zone.id) ?? []).map((report) => ({ ...report, desk: null, zoneAirTempC: null }));
    return {
      zone,
      desks: desks.get(zone.id) ?? 0,
      heaters,
      fans: here.length - heaters,
      coldReports: votes.filter(isCold).length,
      hotReports: votes.filter(isHot).length,
      analysis: analyses.get(zone.id) ?? null,
      diagnosis: diagnoses.get(zone.id) ?? null,
    };
  });
  return { zones, record: analysis.record };
}

/** Outdoor air temperature from which the cooling season counts: the supply air temperature that the plant makes. */
export function seasonThresholdC(ctx: Context, buildingId: number): number {
  const assumption = resolveAssumptions(ctx, buildingId).find((each) => each.id === "supply-air-temp");
  if (!assumption) throw new Error("the supply air temperature is not among the assumptions");
  return assumption.value;
}
