import type { BuildingRow } from "@/db/queries/buildings";
import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import { resolveAssumptions } from "../assumptions/resolve";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { ZoneAnalysis } from "../zone-analysis/analyse-zone";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { type BuildingAnalysis, readBuildingAnalysis } from "../zone-analysis/read";
import { type ZoneCounts, type ZoneReportCounts, zoneCounts } from "./zone-counts";

/** A zone with all that is known of it. */
export type ZoneDetail = ZoneCounts & { analysis: ZoneAnalysis | null; diagnosis: ZoneDiagnosis | null };
export type ZonesDetail = { zones: ZoneDetail[]; reports: ZoneReportCounts; record: BuildingAnalysis["record"] };

/** Every zone of a building: what its trends, devices and reports say, worked out here and now where it has to be. */
export async function readZonesOverview(ctx: Context, buildingId: number): Promise<ZonesDetail> {
  requireFacilities(ctx);
  const { analysis, diagnoses } = await analyseAndDiagnose(ctx, findBuildingOrRefuse(ctx, buildingId));
  const analyses = new Map(analysis.zones.map((each) => [each.zoneId, each]));
  const counted = zoneCounts(ctx, buildingId);
  const zones = counted.zones.map((each) => ({
    ...each,
    analysis: analyses.get(each.zone.id) ?? null,
    diagnosis: diagnoses.get(each.zone.id) ?? null,
  }));
  return { zones, reports: counted.reports, record: analysis.record };
}

export async function analyseAndDiagnose(
  ctx: Context,
  building: BuildingRow,
): Promise<{ analysis: BuildingAnalysis; diagnoses: Map<number, ZoneDiagnosis> }> {
  const thresholdC = seasonThresholdC(ctx, building.id);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  return { analysis, diagnoses: await diagnoseZones(ctx, building, analysis, thresholdC) };
}

/** Outdoor air temperature from which the cooling season counts: the supply air temperature that the plant makes. */
export function seasonThresholdC(ctx: Context, buildingId: number): number {
  const assumption = resolveAssumptions(ctx, buildingId).find((each) => each.id === "supply-air-temp");
  if (!assumption) throw new Error("the supply air temperature is not among the assumptions");
  return assumption.value;
}
