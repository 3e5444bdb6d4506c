import { z } from "zod";
import { listBuildings } from "@/db/queries/buildings";
import {
  deleteOldHeldReports,
  deleteReplyAddresses,
  deleteReportNotes,
  findReportRetention,
  upsertReportRetention,
} from "@/db/queries/report-retention";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { parseInput } from "../parse";

/** Days for which a reply address (after closing) and a note (after the report) are kept: our proposal, no source. */
export const USUAL_RETENTION = { replyAddressDays: 90, noteDays: 365 } as const;
const DAY_MS = 86_400_000;

export type ReportRetention = { replyAddressDays: number; noteDays: number };

const retentionInput = z.object({
  replyAddressDays: z
    .number("Give the days as a whole number from 0 to 365.")
    .int("Give whole days.")
    .min(0, "Give 0 days or more.")
    .max(365, "Keep a reply address for a year at most."),
  noteDays: z
    .number("Give the days as a whole number from 1 to 1,095.")
    .int("Give whole days.")
    .min(1, "Give 1 day or more.")
    .max(1095, "Keep what people wrote for three years at most."),
});

export function readReportRetention(ctx: Context, buildingId: number): ReportRetention {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return retentionOf(ctx, buildingId);
}

const retentionOf = (ctx: Pick<Context, "db">, buildingId: number): ReportRetention => {
  const { replyAddressDays, noteDays } = findReportRetention(ctx.db, buildingId) ?? USUAL_RETENTION;
  return { replyAddressDays, noteDays };
};

/** Sets how long a building keeps what reports say of their senders, and deletes at once what is past it. */
export function changeReportRetention(ctx: Context, buildingId: number, input: z.input<typeof retentionInput>): void {
  const actor = requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const days = parseInput(retentionInput, input);
  upsertReportRetention(ctx.db, { ...days, buildingId, changedBy: actorName(actor), changedAtMs: ctx.now });
  deleteOldReportDetails(ctx);
}

/**
 * Deletes reply addresses and notes that have been kept for their building's days; votes, wishes and times stay, so that no
 * figure changes. A report that nobody closes keeps its address no longer than its note; one kept aside is deleted whole
 * after the days of a note. Whoever keeps the time calls it; it asks nobody's leave.
 */
export function deleteOldReportDetails(ctx: Pick<Context, "db" | "now">): { addresses: number; notes: number } {
  const deleted = { addresses: 0, notes: 0 };
  for (const { id } of listBuildings(ctx.db)) {
    const { replyAddressDays, noteDays } = retentionOf(ctx, id);
    const madeBeforeMs = ctx.now - noteDays * DAY_MS;
    const closedBeforeMs = ctx.now - replyAddressDays * DAY_MS;
    deleted.addresses += deleteReplyAddresses(ctx.db, id, { closedBeforeMs, madeBeforeMs });
    deleted.notes += deleteReportNotes(ctx.db, id, madeBeforeMs);
    deleteOldHeldReports(ctx.db, id, madeBeforeMs);
  }
  return deleted;
}
