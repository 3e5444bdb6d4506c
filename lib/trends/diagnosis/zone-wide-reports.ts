import { signTestProbability } from "./report-chance";
import { countReports, isCold, isHot, isZoneWide, type ReportCount } from "./report-counts";
import type { ReportEvidence, ZoneEvidence } from "./zone-evidence";

/** Chance at or below which reports of one kind outnumber the other by more than luck: a building has tens of zones, and at 5 % one or two would be named by luck alone. Judgement, no source. */
const CHANCE = 0.01;
/** Reports of one kind per desk and year from which they matter: one from every second desk. Judgement, no source. */
const LEAST_PER_DESK_YEAR = 0.5;

type ReportFilter = (report: ReportEvidence) => boolean;

/** Reports of one kind against those of the opposite kind. */
export type ReportBalance = {
  count: ReportCount;
  opposite: number;
  /** Chance of a balance at least as lopsided where hot and cold are equally likely. */
  chance: number;
  /** Null where no desks are registered. */
  perDeskYear: number | null;
};

/**
 * Hot or cold reports of a zone that `own` lets through, against the opposite ones that `opposite` lets through. A desk
 * counts no more often than all other reports of its kind together: one person is not the zone.
 */
export function reportBalance(
  zone: ZoneEvidence,
  kind: "hot" | "cold",
  lets: { own: ReportFilter; opposite: ReportFilter },
): ReportBalance {
  const [isOwn, isOpposite] = kind === "hot" ? [isHot, isCold] : [isCold, isHot];
  const count = countReports(zone.reports, (each) => isOwn(each) && lets.own(each));
  const opposite = countReports(zone.reports, (each) => isOpposite(each) && lets.opposite(each)).reports;
  const fromOthers = count.reports - (count.busiest?.reports ?? 0);
  const { deskCount, reportYears } = zone;
  return {
    count,
    opposite,
    chance: signTestProbability(Math.min(count.reports, 2 * fromOthers), opposite),
    perDeskYear: deskCount > 0 && reportYears > 0 ? count.reports / (deskCount * reportYears) : null,
  };
}

/**
 * Whether reports speak for the zone as a whole: from more than one person, more of them than luck would bring, and
 * often enough to matter (which is not asked where no desks are registered).
 */
export const speaksForZone = (balance: ReportBalance, chance: number = CHANCE): boolean =>
  isZoneWide(balance.count) &&
  balance.chance <= chance &&
  (balance.perDeskYear === null || balance.perDeskYear >= LEAST_PER_DESK_YEAR);

/** Made while it was warm enough outdoors for mechanical cooling: what people say in winter is about the heating. */
export const inSeason: ReportFilter = (report) => report.inCoolingSeason;

export const anyReport: ReportFilter = () => true;

/** Hot reports of the cooling season against its cold ones. */
export const hotBalance = (zone: ZoneEvidence): ReportBalance =>
  reportBalance(zone, "hot", { own: inSeason, opposite: inSeason });
