import type { ZoneDiagnosis } from "@/lib/trends/diagnosis/diagnose-zone";
import type { StateExposure, ZoneExposure } from "@/lib/trends/zone-exposure";
import type { OccupiedState } from "@/lib/trends/zone-state";
import type { ZoneStatistics } from "@/lib/trends/zone-statistics";
import type { Context } from "../context";
import { type Kept, readKept } from "../kept/read-kept";
import type { ResultKind } from "../kept/result-kind";
import type { ZoneAnalysis } from "../zone-analysis/analyse-zone";
import { type BuildingAnalysis, type KeptZoneAnalysis, zoneAnalysisSubject } from "../zone-analysis/read";
import { readZone } from "./find";
import { analyseAndDiagnose, type ZoneDetail } from "./overview";
import { type ZoneCounts, type ZoneReportCounts, zoneCounts } from "./zone-counts";

/** Of a zone's analysis what a table of zones shows: small enough for thousands of zones. */
export type ZoneBrief = {
  exposure: Pick<ZoneExposure, "occupiedZoneAirTempC" | "coolingSeasonHours"> & {
    byState: Record<OccupiedState, Pick<StateExposure, "hoursBelowTarget">>;
  };
  statistics: { coolingSetpoint: Pick<NonNullable<ZoneStatistics["coolingSetpoint"]>, "occupiedMedianC"> | null };
};

/** A zone with all that is known of it, short. */
export type ZoneOverview = ZoneCounts & { analysis: ZoneBrief | null; diagnosis: ZoneDiagnosis | null };
export type ZonesOverview = {
  zones: ZoneOverview[];
  /** Sums of their reports, as far as they may be shown. */
  reports: ZoneReportCounts;
  record: BuildingAnalysis["record"];
};

/** What is kept of all zones of a building: what their trends and reports say, zones without a record left out. */
export type ZonesSummary = {
  zones: { zoneId: number; analysis: ZoneBrief; diagnosis: ZoneDiagnosis | null }[];
  record: BuildingAnalysis["record"];
};

export const ZONES: ResultKind<ZonesSummary> = {
  name: "zones",
  version: 2,
  inputs: ["trends", "mapping", "zones", "devices", "reports", "building", "assumptions"],
  async workOut(ctx, building) {
    const { analysis, diagnoses } = await analyseAndDiagnose(ctx, building);
    return {
      record: analysis.record,
      zones: analysis.zones.map((each) => ({
        zoneId: each.zoneId,
        analysis: briefOf(each),
        diagnosis: diagnoses.get(each.zoneId) ?? null,
      })),
    };
  },
};

/** Every zone of a building as it is on record, with what its trends and reports said when they were last worked out. */
export async function readShownZones(
  ctx: Context,
  buildingId: number,
): Promise<{ overview: ZonesOverview; kept: Kept<ZonesSummary> }> {
  const kept = await readKept(ctx, buildingId, ZONES);
  return { overview: shownZones(ctx, buildingId, kept), kept };
}

/** The same with what is kept at hand. Checks no right: whoever read that has done so. */
export function shownZones(ctx: Context, buildingId: number, kept: Kept<ZonesSummary>): ZonesOverview {
  const found = new Map(kept.result?.zones.map((each) => [each.zoneId, each]));
  const { zones: counted, reports } = zoneCounts(ctx, buildingId);
  const zones = counted.map((each) => {
    const { analysis = null, diagnosis = null } = found.get(each.zone.id) ?? {};
    return { ...each, analysis, diagnosis };
  });
  return { zones, reports, record: kept.result?.record ?? null };
}

/** One zone in the same way, with its whole analysis, which may be of a moment later than the rest. */
export function shownZone(ctx: Context, buildingId: number, zoneId: number, kept: Kept<ZonesSummary>): ZoneDetail {
  const zone = readZone(ctx, buildingId, zoneId);
  const own = kept.result?.zones.find((each) => each.zoneId === zoneId);
  const whole = own && (ctx.results.find(buildingId, zoneAnalysisSubject(zoneId))?.result as KeptZoneAnalysis);
  const [counts] = zoneCounts(ctx, buildingId, [zone]).zones;
  const overview = { ...(counts as ZoneCounts), analysis: whole?.analysis ?? null };
  return { ...overview, diagnosis: own?.diagnosis ?? null };
}

function briefOf({ exposure, statistics }: ZoneAnalysis): ZoneBrief {
  const { occupiedZoneAirTempC, coolingSeasonHours, byState } = exposure;
  const below = Object.entries(byState).map(([state, { hoursBelowTarget }]) => [state, { hoursBelowTarget }]);
  const { coolingSetpoint } = statistics;
  return {
    exposure: {
      occupiedZoneAirTempC,
      coolingSeasonHours,
      byState: Object.fromEntries(below) as ZoneBrief["exposure"]["byState"],
    },
    statistics: { coolingSetpoint: coolingSetpoint && { occupiedMedianC: coolingSetpoint.occupiedMedianC } },
  };
}
