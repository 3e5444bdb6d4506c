import type { ReportEvidence } from "./zone-evidence";

/** Reports of one kind: how many, from which desks, and how many without a desk. */
export type ReportCount = { reports: number; desks: string[]; withoutDesk: number };

/** Cold: a vote of -2 or -3, or -1 with the wish for it warmer. Reports of mere "slightly cool" are not counted. */
export const isCold = (report: ReportEvidence): boolean =>
  report.thermalSensation <= -2 || (report.thermalSensation === -1 && report.preference === "warmer");

/** Hot: the mirror image. */
export const isHot = (report: ReportEvidence): boolean =>
  report.thermalSensation >= 2 || (report.thermalSensation === 1 && report.preference === "cooler");

export function countReports(
  reports: readonly ReportEvidence[],
  counts: (report: ReportEvidence) => boolean,
): ReportCount {
  const found = reports.filter(counts);
  return {
    reports: found.length,
    desks: [...new Set(found.flatMap((each) => (each.desk === null ? [] : [each.desk])))].sort(),
    withoutDesk: found.filter((each) => each.desk === null).length,
  };
}

/**
 * More than one person's report: two desks, a desk and a report of the zone, or three reports of the zone alone (which
 * cannot be told apart by person). Judgement, no source.
 */
export const isZoneWide = (count: ReportCount): boolean =>
  count.desks.length + Math.min(1, count.withoutDesk) >= 2 || count.withoutDesk >= 3;
