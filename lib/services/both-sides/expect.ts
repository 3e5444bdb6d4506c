import type { ExpectedReports } from "@/lib/comfort-reports/both-sides/expected-reports";
import { expectedOfSeason, type SeasonRecord, seasonModel } from "@/lib/comfort-reports/both-sides/season-record";
import { VOTE_PRIOR_SOURCE, VOTE_PRIORS } from "@/lib/comfort-reports/both-sides/vote-prior";
import { type Share, wantedShares } from "@/lib/comfort-reports/both-sides/wanted-shares";
import { LEAST_PEOPLE } from "@/lib/comfort-reports/disclosure/disclose-counts";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { type Kept, readKept } from "../kept/read-kept";
import { SIDES, type SidesRecord } from "./shown";

type Recorded = NonNullable<SidesRecord>;

/** Hours and reports of the cooling season, which a cooling setpoint moves: what this page and proposals are worked out from. */
export function coolingSeasonOf({ zones, counts, peopleByZone }: Recorded): SeasonRecord {
  const people = new Map(peopleByZone);
  return {
    prior: VOTE_PRIORS.summer,
    zones: zones.map(({ zoneId, floor, sinceReports, lastYear }) => ({
      zoneId,
      floor,
      sinceReports: sinceReports.summer,
      lastYear: lastYear.summer,
      people: people.get(zoneId) ?? 0,
      counts: counts.flatMap((each) =>
        each.zoneId === zoneId && each.season === "summer"
          ? [[each.airTempC, each.tooCold, each.tooWarm] as const]
          : [],
      ),
    })),
  };
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

/**
 * Both sides of the cooling season's air of a building, a degree down to three up. Null without a record of zones with desks,
 * and where so few people have reported that figures would be theirs; with none there are the field votes alone.
 */
export async function readBothSides(
  ctx: Context,
  buildingId: number,
): Promise<{ sides: BothSides; isOfTooFew: boolean; source: string; kept: Kept<SidesRecord> }> {
  requireFacilities(ctx);
  const kept = await readKept(ctx, buildingId, SIDES);
  const { result } = kept;
  const isOfTooFew = result !== null && result.people > 0 && result.people < LEAST_PEOPLE.screen;
  return { sides: result && !isOfTooFew ? bothSides(result) : null, isOfTooFew, source: VOTE_PRIOR_SOURCE, kept };
}

export function bothSides(record: Recorded): BothSides {
  const bins = record.zones.flatMap(({ lastYear }) => lastYear.summer);
  const deskHours = bins.reduce((sum, [, hours]) => sum + hours, 0);
  if (deskHours === 0) return null;
  const meanC = bins.reduce((sum, [airTempC, hours]) => sum + airTempC * hours, 0) / deskHours;
  const season = coolingSeasonOf(record);
  const model = seasonModel(season);
  const steps = STEPS_K.map((shiftK) => ({
    shiftK,
    meanAirTempC: meanC + shiftK,
    expected: expectedOfSeason(season, () => ({ riseK: shiftK, share: 1 })),
    ...wantedShares(model, meanC + shiftK),
  }));
  return { record, deskHours, steps };
}
