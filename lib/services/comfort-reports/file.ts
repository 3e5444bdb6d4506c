import { randomBytes } from "node:crypto";
import { inTransaction } from "@/db/client";
import {
  type ComfortLinkRow,
  findComfortLinkByToken,
  findReportBySubmission,
  insertComfortReport,
} from "@/db/queries/comfort";
import { findHeldBySubmission, insertHeldReport } from "@/db/queries/held-reports";
import { countSentByLink } from "@/db/queries/report-counts";
import { fateOf } from "@/lib/comfort-reports/flood";
import type { Context } from "../context";
import { parseInput } from "../parse";
import { type ComfortReportInput, reportColumns, reportInput } from "./report-input";

const HOUR_MS = 3_600_000;

/** What became of a report that somebody sent through a link. */
export type FilingOutcome =
  | { status: "taken" | "held"; reportedAtMs: number; followToken: string | null }
  | { status: "refused" }
  | { status: "link-ended" };

/** What the public form may know: that the link is good, and nothing about the building beyond it. */
export function openComfortForm(ctx: Pick<Context, "db">, token: string): { open: boolean } {
  return { open: linkInForce(ctx, token) !== undefined };
}

function linkInForce(ctx: Pick<Context, "db">, token: string): ComfortLinkRow | undefined {
  const link = findComfortLinkByToken(ctx.db, token);
  return link && link.revokedAtMs === null ? link : undefined;
}

/**
 * Files a comfort report through a link. Needs no account; gives back nothing but what became of it and the secret address
 * at which it can be followed. The same submission sent twice (a double tap, a page sent again) is one report.
 * `sentFromAddress`: reports that came from the sender's network address within the hour, null where it is not known.
 */
export function fileComfortReport(
  ctx: Pick<Context, "db" | "now">,
  token: string,
  input: ComfortReportInput,
  sentFromAddress: number | null = null,
): FilingOutcome {
  const link = linkInForce(ctx, token);
  if (!link) return { status: "link-ended" };
  const values = parseInput(reportInput, input);
  const followToken = randomBytes(16).toString("base64url");
  return inTransaction(ctx.db, (tx) => {
    const earlier = values.submissionId ? findReportBySubmission(tx, values.submissionId) : undefined;
    if (earlier?.linkId === link.id)
      return { status: "taken", reportedAtMs: earlier.reportedAtMs, followToken: earlier.followToken };
    const aside = values.submissionId ? findHeldBySubmission(tx, values.submissionId) : undefined;
    if (aside?.linkId === link.id)
      return { status: "held", reportedAtMs: aside.heldAtMs, followToken: aside.followToken };
    const fate = fateOf({ ofLink: countSentByLink(tx, link.id, ctx.now - HOUR_MS), ofAddress: sentFromAddress });
    if (fate === "refused") return { status: "refused" };
    const { buildingId } = link;
    if (fate === "held") {
      const { submissionId } = values;
      const sent = JSON.stringify(values);
      insertHeldReport(tx, { buildingId, linkId: link.id, heldAtMs: ctx.now, followToken, submissionId, sent });
    } else
      insertComfortReport(tx, {
        ...reportColumns(values),
        buildingId,
        zoneId: link.zoneId,
        deskId: link.deskId,
        linkId: link.id,
        followToken,
        reportedAtMs: ctx.now,
      });
    return { status: fate, reportedAtMs: ctx.now, followToken };
  });
}
