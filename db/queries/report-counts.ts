import { and, count, eq, gte } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortReport, heldReport } from "../schema/comfort";

/** Reports that a link has sent since a moment, taken and kept aside, for holding back a flood. */
export function countSentByLink(db: Queryable, linkId: number, sinceMs: number): number {
  const taken = db
    .select({ reports: count() })
    .from(comfortReport)
    .where(and(eq(comfortReport.linkId, linkId), gte(comfortReport.reportedAtMs, sinceMs)))
    .get();
  const aside = db
    .select({ reports: count() })
    .from(heldReport)
    .where(and(eq(heldReport.linkId, linkId), gte(heldReport.heldAtMs, sinceMs)))
    .get();
  return (taken?.reports ?? 0) + (aside?.reports ?? 0);
}
