import { localDayOf } from "./local-day";

/** Where a report came from, as far as it is known. */
export type ReportSource = {
  id: number;
  deskId: number | null;
  linkId: number | null;
  reportedAtMs: number;
  /** What stands for the desk and its day once the desk is deleted. */
  personDay: string | null;
};

/** Whether a report was a desk's that is deleted: how many such desks there are cannot be told. */
export const isDeskDeleted = ({ personDay }: Pick<ReportSource, "personDay">): boolean => personDay !== null;

/**
 * Repeats of one person on one day as one: reports of the same desk, else through the same link, on one local day share a
 * key. People who share a zone's link cannot be told apart, so that a count of keys is the least number of people; a report
 * with neither stands for itself. `offsetMsAt`: how far the building's clock is ahead of UTC [ms].
 */
export function personDayKey(report: ReportSource, offsetMsAt: (atMs: number) => number): string {
  const { id, deskId, linkId, reportedAtMs, personDay } = report;
  if (personDay !== null) return `deleted/${personDay}`;
  if (deskId === null && linkId === null) return `report/${id}`;
  const who = deskId === null ? `link/${linkId}` : `desk/${deskId}`;
  return `${who}/${localDayOf(reportedAtMs, offsetMsAt)}`;
}

export const countPersonDays = (reports: readonly ReportSource[], offsetMsAt: (atMs: number) => number): number =>
  new Set(reports.map((report) => personDayKey(report, offsetMsAt))).size;
