import { randomBytes } from "node:crypto";
import { z } from "zod";
import { inTransaction } from "@/db/client";
import { listBuildings } from "@/db/queries/buildings";
import {
  deleteOldHeldReports,
  deleteReplyAddresses,
  deleteReportDesk,
  deleteReportNotes,
  findReportRetention,
  listReportsWithDesk,
  upsertReportRetention,
} from "@/db/queries/report-retention";
import { personDayKey } from "@/lib/comfort-reports/person-days";
import { dayStart } from "@/lib/time/local-days";
import { zoneTable } from "@/lib/time/zone-table";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { groupBy } from "../group-by";
import { parseInput } from "../parse";

/** Days for which a reply address (after closing), a note and a desk (after the report) are kept: our proposal, no source. */
export const USUAL_RETENTION = { replyAddressDays: 90, noteDays: 365, deskDays: 365 } as const;
const DAY_MS = 86_400_000;

export type ReportRetention = { replyAddressDays: number; noteDays: number; deskDays: number };

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
  deskDays: z
    .number("Give the days as a whole number from 1 to 1,095.")
    .int("Give whole days.")
    .min(1, "Give 1 day or more.")
    .max(1095, "Keep desks for three years at most."),
});

export function readReportRetention(ctx: Context, buildingId: number): ReportRetention {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return retentionOf(ctx, buildingId);
}

const retentionOf = (ctx: Pick<Context, "db">, buildingId: number): ReportRetention => {
  const { replyAddressDays, noteDays, deskDays } = findReportRetention(ctx.db, buildingId) ?? USUAL_RETENTION;
  return { replyAddressDays, noteDays, deskDays };
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
 * Deletes reply addresses, notes and desks that have been kept for their building's days; votes, wishes, times and zones stay, and
 * so does what was one person's day. A report that nobody closes keeps its address no longer than its note; one kept aside is deleted whole
 * after the days of a note. Whoever keeps the time calls it; it asks nobody's leave.
 */
export function deleteOldReportDetails(
  ctx: Pick<Context, "db" | "now">,
): Record<"addresses" | "notes" | "desks", number> {
  const deleted = { addresses: 0, notes: 0, desks: 0 };
  for (const { id, timeZone } of listBuildings(ctx.db)) {
    const { replyAddressDays, noteDays, deskDays } = retentionOf(ctx, id);
    const madeBeforeMs = ctx.now - noteDays * DAY_MS;
    const closedBeforeMs = ctx.now - replyAddressDays * DAY_MS;
    deleted.addresses += deleteReplyAddresses(ctx.db, id, { closedBeforeMs, madeBeforeMs });
    deleted.notes += deleteReportNotes(ctx.db, id, madeBeforeMs);
    deleteOldHeldReports(ctx.db, id, madeBeforeMs);
    deleted.desks += deleteDesks(ctx, id, { timeZone, beforeMs: ctx.now - deskDays * DAY_MS });
  }
  return deleted;
}

/** Days that have passed as a whole go together, so that a person's repeats of a day stay one. Returns how many reports. */
function deleteDesks(
  { db }: Pick<Context, "db">,
  buildingId: number,
  { timeZone, beforeMs }: { timeZone: string; beforeMs: number },
): number {
  const table = zoneTable(timeZone);
  const offsetMsAt = (atMs: number): number => table.offsetAt(Math.floor(atMs / 1000)) * 1000;
  const day = Math.floor(table.localFromUtc(Math.floor(beforeMs / 1000)) / 86_400);
  return inTransaction(db, (tx) => {
    const reports = listReportsWithDesk(tx, buildingId, dayStart(table, day) * 1000);
    const byPersonDay = groupBy(reports, (report) => personDayKey(report, offsetMsAt));
    for (const group of byPersonDay.values())
      deleteReportDesk(
        tx,
        group.map(({ id }) => id),
        randomBytes(8).toString("base64url"),
      );
    return reports.length;
  });
}
