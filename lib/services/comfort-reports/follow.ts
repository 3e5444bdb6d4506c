import { findBuilding } from "@/db/queries/buildings";
import { findComfortLink, findReportByFollowToken } from "@/db/queries/comfort";
import { findHeldByFollowToken } from "@/db/queries/held-reports";
import { listReportEvents } from "@/db/queries/report-events";
import type { ReportState } from "@/lib/comfort-reports/report-state";
import type { Context } from "../context";
import { ServiceError } from "../errors";

/** What whoever sent a report may see of it: what they said, how far it is, and what was answered. */
export type FollowedReport = {
  reportedAtMs: number;
  timeZone: string;
  language: string;
  /** `held`: kept aside, not yet looked at. */
  state: ReportState | "held";
  thermalSensation: number;
  preference: string;
  /** States and answers, first things first; without names of staff. */
  steps: { id: number; atMs: number; state: ReportState | null; answer: string }[];
  /** Token of the link that it came through, where that is still in force. */
  linkToken: string | null;
};

/** Reads a report by the secret address that its sender was given. Refuses as not found what nobody was given. */
export function followReport(ctx: Pick<Context, "db">, followToken: string): FollowedReport {
  const report = findReportByFollowToken(ctx.db, followToken);
  const held = report ? undefined : findHeldByFollowToken(ctx.db, followToken);
  const row = report ?? held;
  const building = row && findBuilding(ctx.db, row.buildingId);
  if (!row || !building) throw new ServiceError("not-found", "This report does not exist.");
  const link = row.linkId === null ? undefined : findComfortLink(ctx.db, row.buildingId, row.linkId);
  const { timeZone } = building;
  const linkToken = link && link.revokedAtMs === null ? link.token : null;
  if (report) {
    const { reportedAtMs, language, state, thermalSensation, preference } = report;
    const steps = listReportEvents(ctx.db, report.id)
      .filter((event) => event.state !== null || event.answer !== "")
      .map(({ id, atMs, state: to, answer }) => ({ id, atMs, state: to, answer }));
    return { reportedAtMs, timeZone, language, state, thermalSensation, preference, steps, linkToken };
  }
  const sent = JSON.parse(held?.sent ?? "{}") as { language: string; thermalSensation: number; preference: string };
  return { ...sent, reportedAtMs: held?.heldAtMs ?? 0, timeZone, state: "held", steps: [], linkToken };
}
