import {
  type ExpectedReports,
  expectedReports,
  type PlannedZone,
} from "@/lib/comfort-reports/both-sides/expected-reports";
import { fitReportModel } from "@/lib/comfort-reports/both-sides/fit-report-model";
import type { ReportModel } from "@/lib/comfort-reports/both-sides/report-model";
import { VOTE_PRIOR_SOURCE, VOTE_PRIORS } from "@/lib/comfort-reports/both-sides/vote-prior";
import { type Share, wantedShares } from "@/lib/comfort-reports/both-sides/wanted-shares";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { type Kept, readKept } from "../kept/read-kept";
import type { VoteSeason } from "./exposure";
import { SIDES, type SidesRecord } from "./shown";

type Recorded = NonNullable<SidesRecord>;
export type SeasonModels = Record<VoteSeason, ReportModel>;

/** A model for each season, fitted to a building's own hours and reports. */
export function seasonModels(record: Recorded): SeasonModels {
  const modelOf = (season: VoteSeason): ReportModel => {
    const counts = new Map(
      record.counts.flatMap((each) => (each.season === season ? [[`${each.zoneId}/${each.airTempC}`, each]] : [])),
    );
    const zones = record.zones.map(({ zoneId, floor, sinceReports }) => ({
      zone: String(zoneId),
      floor,
      bins: sinceReports[season].map(([airTempC, deskHours]) => {
        const { tooCold = 0, tooWarm = 0 } = counts.get(`${zoneId}/${airTempC}`) ?? {};
        return { airTempC, deskHours, tooCold, tooWarm };
      }),
    }));
    return fitReportModel(zones, VOTE_PRIORS[season]);
  };
  return { summer: modelOf("summer"), winter: modelOf("winter") };
}

/** A year's desk-hours of zones as recorded; `zoneIds` picks some of them. */
function yearOf(record: Recorded, season: VoteSeason, zoneIds: ReadonlySet<number> | null): PlannedZone[] {
  return record.zones
    .filter(({ zoneId }) => zoneIds === null || zoneIds.has(zoneId))
    .map(({ zoneId, lastYear }) => ({
      zone: String(zoneId),
      bins: lastYear[season].map(([airTempC, deskHours]) => ({ airTempC, deskHours })),
    }));
}

/**
 * Reports of a year that are to be expected when the zone air of zones is moved by `shiftK` [K] by zone id, in the cooling
 * season alone: a cooling setpoint does not move the rest of the year. Only the zones named in `zoneIds`, or all.
 */
export function expectedAt(
  record: Recorded,
  models: SeasonModels,
  shiftK: (zoneId: number) => number,
  zoneIds: ReadonlySet<number> | null = null,
): ExpectedReports {
  const summer = [{ model: models.summer, zones: yearOf(record, "summer", zoneIds) }];
  return expectedReports(summer, (zone) => shiftK(Number(zone)));
}

/** Both sides at one step of the zone air. */
export type SideStep = {
  shiftK: number;
  meanAirTempC: number;
  expected: ExpectedReports;
  warmer: Share;
  cooler: Share;
};

export type BothSides = {
  record: Recorded;
  deskHours: number;
  steps: SideStep[];
} | null;

const STEPS_K = [-1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3];

/** Both sides of the cooling season's air of a building, a degree down to three up; null without a record of zones with desks. */
export async function readBothSides(
  ctx: Context,
  buildingId: number,
): Promise<{ sides: BothSides; source: string; kept: Kept<SidesRecord> }> {
  requireFacilities(ctx);
  const kept = await readKept(ctx, buildingId, SIDES);
  return { sides: kept.result ? bothSides(kept.result) : null, source: VOTE_PRIOR_SOURCE, kept };
}

export function bothSides(record: Recorded): BothSides {
  const bins = record.zones.flatMap(({ lastYear }) => lastYear.summer);
  const deskHours = bins.reduce((sum, [, hours]) => sum + hours, 0);
  if (deskHours === 0) return null;
  const meanC = bins.reduce((sum, [airTempC, hours]) => sum + airTempC * hours, 0) / deskHours;
  const models = seasonModels(record);
  const steps = STEPS_K.map((shiftK) => ({
    shiftK,
    meanAirTempC: meanC + shiftK,
    expected: expectedAt(record, models, () => shiftK),
    ...wantedShares(models.summer, meanC + shiftK),
  }));
  return { record, deskHours, steps };
}
