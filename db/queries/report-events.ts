import { asc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortReportEvent } from "../schema/comfort";

export type ReportEventRow = typeof comfortReportEvent.$inferSelect;
export type NewReportEvent = typeof comfortReportEvent.$inferInsert;

export function insertReportEvent(db: Queryable, row: NewReportEvent): number {
  return db.insert(comfortReportEvent).values(row).returning({ id: comfortReportEvent.id }).get().id;
}

/** What was done about a report, first things first. */
export function listReportEvents(db: Queryable, reportId: number): ReportEventRow[] {
  return db
    .select()
    .from(comfortReportEvent)
    .where(eq(comfortReportEvent.reportId, reportId))
    .orderBy(asc(comfortReportEvent.id))
    .all();
}
