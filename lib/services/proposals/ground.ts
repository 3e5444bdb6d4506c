import { type BuildingRow, findOccupiedHours } from "@/db/queries/buildings";
import { countDesksByZone, listZones } from "@/db/queries/zones";
import { weatherYearClock } from "@/lib/energy-model/weather-year-clock";
import { TIER_LABELS } from "@/lib/overcooling/assessment";
import { gatherLiveBuilding } from "@/lib/proposals/gather-live-building";
import type { ZoneFacts } from "@/lib/proposals/gather-live-zones";
import type { LiveBuilding } from "@/lib/proposals/live-building";
import { coolingSeasonOf } from "../both-sides/expect";
import { sidesRecord } from "../both-sides/shown";
import type { Context } from "../context";
import type { Input } from "../kept/inputs";
import { type Kept, readKept } from "../kept/read-kept";
import type { ResultKind } from "../kept/result-kind";
import { assessmentInput, weatherOf } from "../overcooling/assessment-input";
import { diagnoseZones } from "../zone-analysis/diagnose";
import { readBuildingAnalysis } from "../zone-analysis/read";
import { seasonThresholdC } from "../zones/overview";
import { liveCircuits } from "./live-circuits";

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
  version: 2,
  inputs: INPUTS satisfies readonly Input[],
  workOut: (ctx, building) => workOutGround(ctx, building),
};

/** Works out anew what a building's proposals rest on. */
export async function workOutGround(ctx: Context, building: BuildingRow): Promise<ProposalGround> {
  const thresholdC = seasonThresholdC(ctx, building.id);
  const analysis = await readBuildingAnalysis(ctx, building, thresholdC);
  const input = await assessmentInput(ctx, building, analysis, thresholdC);
  const diagnoses = await diagnoseZones(ctx, building, analysis, thresholdC);
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
        },
      ];
    }),
  );
  const weather = weatherOf(ctx, building, analysis);
  const sides = await sidesRecord(ctx, building);
  const tier = analysis.zones.length > 0 ? 2 : 1;
  const floors = new Map(listZones(ctx.db, building.id).map((each) => [each.id, each.floor]));
  return {
    building:
      weather &&
      gatherLiveBuilding(input, {
        tier: { number: tier, label: TIER_LABELS[tier] },
        occupiedDays: occupiedDays(ctx, building),
        clock: weatherYearClock(weather.calendar),
        reports: sides && coolingSeasonOf(sides),
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

/** Days of a year with occupied hours: those of the week; holidays are not taken off. */
function occupiedDays(ctx: Context, building: BuildingRow): number {
  const { weekdays } = findOccupiedHours(ctx.db, building.id);
  const perWeek = Object.values(weekdays).filter((each) => each && each.length > 0).length;
  return (perWeek * 365) / 7;
}

/** What proposals rest on with the circuits as they are now: their rows are few and nothing that is kept rests on them. */
export const withCircuits = (ctx: Context, buildingId: number, building: LiveBuilding): LiveBuilding => ({
  ...building,
  circuits: liveCircuits(ctx, buildingId),
});

/** The last of what proposals rest on, with the circuits as they are now. */
export async function readGround(ctx: Context, buildingId: number): Promise<Kept<ProposalGround>> {
  const kept = await readKept(ctx, buildingId, PROPOSAL_GROUND);
  const { result } = kept;
  if (!result?.building) return kept;
  return { ...kept, result: { ...result, building: withCircuits(ctx, buildingId, result.building) } };
}
