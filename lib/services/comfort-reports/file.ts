import { z } from "zod";
import {
  countReportsOfLink,
  findComfortLinkByToken,
  findReportBySubmission,
  insertComfortReport,
} from "@/db/queries/comfort";
import { PREFERENCES } from "@/db/schema/comfort";
import { ACTIVITIES } from "@/lib/comfort/activity";
import { ENSEMBLES } from "@/lib/comfort/ensembles";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";

/** More reports an hour from one link than a zone's people could make are held off. */
const REPORTS_PER_LINK_AND_HOUR = 30;

const reportInput = z.object({
  thermalSensation: z
    .number("Choose how you feel on the scale from cold to hot.")
    .int()
    .min(-3, "Choose how you feel on the scale from cold to hot.")
    .max(3, "Choose how you feel on the scale from cold to hot."),
  preference: z.enum(PREFERENCES, "Say whether you would like it cooler, warmer or as it is."),
  heaterInUse: z.boolean().nullable().default(null),
  fanInUse: z.boolean().nullable().default(null),
  draught: z.boolean().nullable().default(null),
  clothing: z
    .enum(
      ENSEMBLES.map(({ id }) => id),
      "Choose what comes nearest to what you wear, or leave it open.",
    )
    .nullable()
    .default(null),
  activity: z
    .enum(
      ACTIVITIES.map(({ id }) => id),
      "Choose what comes nearest to what you do, or leave it open.",
    )
    .nullable()
    .default(null),
  note: z.string().trim().max(500, "Keep the note under 500 characters.").default(""),
  submissionId: z.string().max(64).nullable().default(null),
});

export type ComfortReportInput = z.input<typeof reportInput>;

/** What the public form may know: that the link is good, and nothing about the building beyond it. */
export function openComfortForm(ctx: Pick<Context, "db">, token: string): { open: boolean } {
  const link = findComfortLinkByToken(ctx.db, token);
  return { open: link !== undefined && link.revokedAtMs === null };
}

/**
 * Files a comfort report through a link. Needs no account; gives back nothing but that it was taken. The same
 * submission sent twice (a double tap, a page sent again) is one report.
 */
export function fileComfortReport(
  ctx: Pick<Context, "db" | "now">,
  token: string,
  input: ComfortReportInput,
): { reportedAtMs: number } {
  const link = findComfortLinkByToken(ctx.db, token);
  if (!link || link.revokedAtMs !== null)
    throw new ServiceError(
      "not-found",
      "This link is no longer in use. Please ask your facilities team for the new one.",
    );
  const values = parseInput(reportInput, input);
  const earlier = values.submissionId ? findReportBySubmission(ctx.db, values.submissionId) : undefined;
  if (earlier && earlier.linkId === link.id) return { reportedAtMs: earlier.reportedAtMs };
  if (countReportsOfLink(ctx.db, link.id, ctx.now - 3_600_000) >= REPORTS_PER_LINK_AND_HOUR)
    throw new ServiceError(
      "conflict",
      "Many reports have come through this link within the hour. Please send yours again a little later; nothing you typed is lost.",
    );
  const row = insertComfortReport(ctx.db, {
    ...values,
    buildingId: link.buildingId,
    zoneId: link.zoneId,
    deskId: link.deskId,
    linkId: link.id,
    reportedAtMs: ctx.now,
  });
  return { reportedAtMs: row.reportedAtMs };
}
