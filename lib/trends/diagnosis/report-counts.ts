import type { ReportEvidence } from "./zone-evidence";

/** Reports of one kind: how many, from which desks, how many without a desk, and the desk that sent most. */
export type ReportCount = {
  reports: number;
  desks: string[];
  withoutDesk: number;
  busiest: { desk: string; reports: number } | null;
};

type Vote = Pick<ReportEvidence, "thermalSensation" | "preference"> & Partial<ReportEvidence>;

/** Cold: a vote of -2 or -3, or -1 with the wish for it warmer. Reports of mere "slightly cool" are not counted. */
export const isCold = (report: Vote): boolean =>
  report.thermalSensation <= -2 || (report.thermalSensation === -1 && report.preference === "warmer");

/** Hot: the mirror image. */
export const isHot = (report: Vote): boolean =>
  report.thermalSensation >= 2 || (report.thermalSensation === 1 && report.preference === "cooler");

export function countReports(
  reports: readonly ReportEvidence[],
  counts: (report: ReportEvidence) => boolean,
): ReportCount {
  const found = reports.filter(counts);
  const byDesk = new Map<string, number>();
  for (const { desk } of found) if (desk !== null) byDesk.set(desk, (byDesk.get(desk) ?? 0) + 1);
  const [busiest] = [...byDesk].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return {
    reports: found.length,
    desks: [...byDesk.keys()].sort(),
    withoutDesk: found.filter((each) => each.desk === null && !each.isDeskDeleted).length,
    busiest: busiest ? { desk: busiest[0], reports: busiest[1] } : null,
  };
}

/**
 * More than one person's report: two desks, a desk and a report of the zone, or three reports of the zone alone (which
 * cannot be told apart by person). Judgement, no source.
 */
export const isZoneWide = (count: ReportCount): boolean =>
  count.desks.length + Math.min(1, count.withoutDesk) >= 2 || count.withoutDesk >= 3;
