import { poissonInterval } from "@/lib/statistics/poisson";
import { LIVE_STATES, type LiveZone } from "../live-building";
import type { ExpectedReports } from "../live-picture";
import { votesAt } from "./heaters-given";
import type { Rises } from "./zone-effect";

export type MovedZone = { zone: LiveZone; rises: Rises };

const CONFIDENCE = 0.9;

/**
 * Cold and hot reports a year of the zones of a proposal: what the building counted, moved as the shares of field votes who
 * would want it warmer or cooler move. A zone without a hot report is taken to have the building's rate for each desk,
 * half a report at least in all, so that nought does not stay nought. The interval is that of the counts (Garwood 1936).
 */
export function expectedReports(
  moved: readonly MovedZone[],
  all: readonly LiveZone[],
): { cold: ExpectedReports; hot: ExpectedReports } {
  const { cold, hot } = expectedCounts(moved, all);
  return { cold: withInterval(cold), hot: withInterval(hot) };
}

type Counts = Pick<ExpectedReports, "before" | "after">;

/** The same without intervals. */
export function expectedCounts(moved: readonly MovedZone[], all: readonly LiveZone[]): { cold: Counts; hot: Counts } {
  const desks = all.reduce((sum, each) => sum + each.desks, 0);
  const hotPerDesk = desks > 0 ? (all.reduce((sum, each) => sum + each.hotReportsPerYear, 0) + 0.5) / desks : 0;
  const cold = { before: 0, after: 0 };
  const hot = { before: 0, after: 0 };
  for (const { zone, rises } of moved) {
    const ratio = voteRatios(zone, rises);
    cold.before += zone.coldReportsPerYear;
    cold.after += zone.coldReportsPerYear * ratio.warmer;
    const base = Math.max(zone.hotReportsPerYear, hotPerDesk * zone.desks);
    hot.before += zone.hotReportsPerYear;
    hot.after += zone.hotReportsPerYear + base * (ratio.cooler - 1);
  }
  return { cold, hot: { ...hot, after: Math.max(0, hot.after) } };
}

function withInterval({ before, after }: Counts): ExpectedReports {
  const { low, high } = poissonInterval(Math.round(before), CONFIDENCE);
  const share = before > 0 ? after / before : 0;
  return before > 0
    ? { before, after, low: low * share, high: high * share }
    : { before, after, low: 0, high: after + high };
}

/** How the shares of people who want it warmer and cooler change, over the hours of the zone's year. */
function voteRatios({ states }: LiveZone, rises: Rises): { warmer: number; cooler: number } {
  if (!states) return { warmer: 1, cooler: 1 };
  const now = { warmer: 0, cooler: 0 };
  const then = { warmer: 0, cooler: 0 };
  for (const name of LIVE_STATES) {
    const { hours, zoneAirTempC } = states[name];
    const [a, b] = [votesAt(zoneAirTempC), votesAt(zoneAirTempC + rises[name])];
    now.warmer += hours * a.warmer;
    now.cooler += hours * a.cooler;
    then.warmer += hours * b.warmer;
    then.cooler += hours * b.cooler;
  }
  if (now.warmer === 0) return { warmer: 1, cooler: 1 };
  return { warmer: then.warmer / now.warmer, cooler: then.cooler / now.cooler };
}
