import { desksApartProbability } from "../desks-apart";
import { isCold, isHot } from "../report-counts";
import type { Cause, ReportEvidence, ZoneEvidence } from "../zone-evidence";

/** Reports of either kind, and of one desk on either side, below which nothing can be told. Judgement, no source. */
const LEAST_REPORTS = 3;
const LEAST_OF_ONE_DESK = 2;
/** Chance at or below which the desks are apart by more than luck: tens of zones are tried. Judgement, no source. */
const CHANCE = 0.01;
/** The thermostat must read much the same when some are cold as when others are hot [K]. Judgement, no source. */
const SAME_READING_K = 1;

/**
 * Row 17: at the same reading of the one thermostat some desks report cold and others hot, in the cooling season and desk by
 * desk more constantly than luck would bring: rooms with different gains on one controller.
 */
export function roomsOfDifferentNeeds(zone: ZoneEvidence): Cause | null {
  const voted = zone.reports.filter((each) => each.inCoolingSeason && each.desk !== null);
  const [cold, hot] = [voted.filter(isCold), voted.filter(isHot)];
  if (cold.length < LEAST_REPORTS || hot.length < LEAST_REPORTS) return null;
  const [coldDesks, hotDesks] = [leaning(cold, hot), leaning(hot, cold)];
  if (coldDesks.length === 0 || hotDesks.length === 0) return null;
  const [atCold, atHot] = [meanReading(cold), meanReading(hot)];
  if (atCold === null || atHot === null || Math.abs(atCold - atHot) > SAME_READING_K) return null;
  const chance = desksApartProbability(byDesk(cold, hot));
  if (chance > CHANCE) return null;
  return {
    code: "rooms-of-different-needs",
    severity: "caution",
    evidence: {
      zone: zone.zoneCode,
      trends: ["zone-air-temp"],
      coldReports: cold.length,
      hotReports: hot.length,
      coldDesks,
      hotDesks,
      meanReadingColdC: atCold,
      meanReadingHotC: atHot,
      chancePct: 100 * chance,
    },
  };
}

/** Desks that sent two of `own` at least and none of `other`. */
function leaning(own: readonly ReportEvidence[], other: readonly ReportEvidence[]): string[] {
  const desks = [...new Set(own.map((each) => each.desk as string))];
  const count = (of: readonly ReportEvidence[], desk: string): number => of.filter((each) => each.desk === desk).length;
  return desks.filter((desk) => count(own, desk) >= LEAST_OF_ONE_DESK && count(other, desk) === 0).sort();
}

function byDesk(cold: readonly ReportEvidence[], hot: readonly ReportEvidence[]): { cold: number; hot: number }[] {
  const counts = new Map<string | null, { cold: number; hot: number }>();
  const of = (desk: string | null) => {
    const found = counts.get(desk) ?? { cold: 0, hot: 0 };
    counts.set(desk, found);
    return found;
  };
  for (const { desk } of cold) of(desk).cold++;
  for (const { desk } of hot) of(desk).hot++;
  return [...counts.values()];
}

function meanReading(reports: readonly ReportEvidence[]): number | null {
  const known = reports.flatMap((each) => each.zoneAirTempC ?? []);
  return known.length > 0 ? known.reduce((sum, each) => sum + each, 0) / known.length : null;
}
