import {
  expectedOfSeason,
  type MovedAir,
  mediansOfSeason,
  type SeasonRecord,
} from "@/lib/comfort-reports/both-sides/season-record";
import { LIVE_STATES, type LiveZone } from "../live-building";
import type { ExpectedReports } from "../live-picture";
import type { ActingByState, Rises } from "./zone-effect";

export type MovedZone = { zone: LiveZone; effect: { rises: Rises }; acting: ActingByState | null };

/**
 * Reports of too cold and too warm in a year's cooling season from the zones of a proposal, by the model that the page of both sides
 * has: each zone's air moves by its mean rise in the hours in which its levers act. Null where no zone has desks on record.
 */
export function expectedSides(
  record: SeasonRecord | null,
  moved: readonly MovedZone[],
): { cold: ExpectedReports; hot: ExpectedReports } | null {
  const air = record && airOfZones(record, moved);
  if (!air) return null;
  const now = mediansOfSeason(record, air.still);
  const then = expectedOfSeason(record, air.moved);
  const side = (of: "tooCold" | "tooWarm"): ExpectedReports => ({
    before: now[of],
    after: then[of].median,
    low: then[of].countLow,
    high: then[of].countHigh,
  });
  return { cold: side("tooCold"), hot: side("tooWarm") };
}

/** Reports more a year, of both sides together; 0 where no zone has desks on record. */
export function moreReports(record: SeasonRecord | null, moved: readonly MovedZone[]): number {
  const air = record && airOfZones(record, moved);
  if (!air) return 0;
  const now = mediansOfSeason(record, air.still);
  const then = mediansOfSeason(record, air.moved);
  return then.tooCold - now.tooCold + then.tooWarm - now.tooWarm;
}

const STILL: MovedAir = { riseK: 0, share: 0 };

type AirOf = (zoneId: number) => MovedAir | null;

/** The zones' air as it is and as it is moved; null where none of them has desks on record. */
function airOfZones(record: SeasonRecord, moved: readonly MovedZone[]): { still: AirOf; moved: AirOf } | null {
  const airOf = new Map(moved.map((each) => [each.zone.zoneId, movedAir(each)]));
  if (!record.zones.some(({ zoneId }) => airOf.has(zoneId))) return null;
  return { still: (zoneId) => (airOf.has(zoneId) ? STILL : null), moved: (zoneId) => airOf.get(zoneId) ?? null };
}

/** Mean rise over the hours in which a zone's levers act, and the share that they are of its hours. */
export function movedAir({ zone: { states }, effect, acting }: MovedZone): MovedAir {
  if (!states || !acting) return { riseK: 0, share: 0 };
  let [all, moved, rise] = [0, 0, 0];
  for (const name of LIVE_STATES) {
    all += states[name].hours;
    moved += acting[name].hours;
    rise += acting[name].hours * effect.rises[name];
  }
  return moved > 0 && all > 0 ? { riseK: rise / moved, share: Math.min(1, moved / all) } : { riseK: 0, share: 0 };
}
