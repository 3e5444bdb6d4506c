import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { listComfortReports } from "@/db/queries/comfort";
import { countDesksByZone, listZones } from "@/db/queries/zones";
import { TIER_LABELS } from "@/lib/overcooling/assessment";
import { gatherLiveBuilding } from "@/lib/proposals/gather-live-building";
import type { ZoneFacts } from "@/lib/proposals/gather-live-zones";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { isHot } from "@/lib/trends/diagnosis/report-counts";
import type { Context } from "../context";
import type { Input } from "../kept/inputs";
import type { ResultKind } from "../kept/result-kind";
import { assessmentInput } from "../overcooling/assessment-input";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";

const YEAR_SECONDS = 365 * 86_400;

/** What proposals rest on: the building's numbers, and what the diagnosis proposes for each zone. */
export type ProposalGround = {
  /** Null without a weather year. */
  building: LiveBuilding | null;
  verdicts: { zoneId: number; code: string; floor: string; verdict: string }[];
};

const INPUTS = [
  "trends",
  "mapping",
  "zones",
  "devices",
  "reports",
  "building",
  "assumptions",
  "weather",
  "bills",
] as const;

export const PROPOSAL_GROUND: ResultKind<ProposalGround> = {
  name: "proposal-ground",
  version: 1,
  inputs: INPUTS satisfies readonly Input[],
  workOut: (ctx, building) => workOutGround(ctx, building),
};

/** Works out anew what a building's proposals rest on. */
export async function workOutGround(ctx: Context, building: BuildingRow): Promise<ProposalGround> {
  const thresholdC = seasonThresholdC(ctx, building.id);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  const input = await assessmentInput(ctx, building, analysis, thresholdC);
  const diagnoses = await diagnoseZones(ctx, building, analysis, thresholdC);
  const hot = hotReports(ctx, building, analysis.record?.toUtcSeconds ?? Math.floor(ctx.now / 1000) + 1);
  const desks = countDesksByZone(ctx.db, building.id);
  const facts = new Map<number, ZoneFacts>(
    input.zones.map(({ zoneId }) => {
      const statistics = analysis.zones.find((each) => each.zoneId === zoneId)?.statistics;
      return [
        zoneId,
        {
          coolingSetpointC: statistics?.coolingSetpoint?.occupiedMedianC ?? null,
          heatingSetpointC: statistics?.heatingSetpoint?.occupiedMedianC ?? null,
          desks: desks.get(zoneId) ?? 0,
          hotReportsPerYear: hot.get(zoneId) ?? 0,
        },
      ];
    }),
  );
  const tier = analysis.zones.length > 0 ? 2 : 1;
  const floors = new Map(listZones(ctx.db, building.id).map((each) => [each.id, each.floor]));
  return {
    building: gatherLiveBuilding(input, {
      tier: { number: tier, label: TIER_LABELS[tier] },
      occupiedDays: occupiedDays(ctx, building),
      zones: facts,
    }),
    verdicts: input.zones.map(({ zoneId, code }) => ({
      zoneId,
      code,
      floor: floors.get(zoneId) ?? "",
      verdict: diagnoses.get(zoneId)?.verdict ?? "undetermined",
    })),
  };
}

/** Hot reports of the last recorded year by zone id; all of them, whatever the hour: people are hot after hours as well. */
function hotReports(ctx: Context, building: BuildingRow, untilSeconds: number): Map<number, number> {
  const counts = new Map<number, number>();
  for (const report of listComfortReports(ctx.db, building.id, (untilSeconds - YEAR_SECONDS) * 1000)) {
    if (report.reportedAtMs / 1000 >= untilSeconds) continue;
    if (isHot({ ...report, desk: null, zoneAirTempC: null }))
      counts.set(report.zoneId, (counts.get(report.zoneId) ?? 0) + 1);
  }
  return counts;
}

/** Days of a year with occupied hours: those of the week; holidays are not taken off. */
function occupiedDays(ctx: Context, building: BuildingRow): number {
  const { weekdays } = findOccupiedHours(ctx.db, building.id);
  const perWeek = Object.values(weekdays).filter((each) => each && each.length > 0).length;
  return (perWeek * 365) / 7;
}
