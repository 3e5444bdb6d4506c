import { and, asc, eq, gt, lte, max, ne } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortReport, reportWebhook } from "../schema/comfort";
import type { ComfortReportRow } from "./comfort";

export type ReportWebhookRow = typeof reportWebhook.$inferSelect;

export function findReportWebhook(db: Queryable, buildingId: number): ReportWebhookRow | undefined {
  return db.select().from(reportWebhook).where(eq(reportWebhook.buildingId, buildingId)).get();
}

/** Webhooks whose next try is due. */
export function listDueWebhooks(db: Queryable, nowMs: number): ReportWebhookRow[] {
  return db.select().from(reportWebhook).where(lte(reportWebhook.nextTryAtMs, nowMs)).all();
}

export function upsertReportWebhook(db: Queryable, row: typeof reportWebhook.$inferInsert): void {
  db.insert(reportWebhook).values(row).onConflictDoUpdate({ target: reportWebhook.buildingId, set: row }).run();
}

export function updateReportWebhook(db: Queryable, buildingId: number, changes: Partial<ReportWebhookRow>): void {
  db.update(reportWebhook).set(changes).where(eq(reportWebhook.buildingId, buildingId)).run();
}

export function deleteReportWebhook(db: Queryable, buildingId: number): void {
  db.delete(reportWebhook).where(eq(reportWebhook.buildingId, buildingId)).run();
}

export function newestReportId(db: Queryable, buildingId: number): number {
  const newest = db
    .select({ id: max(comfortReport.id) })
    .from(comfortReport)
    .where(eq(comfortReport.buildingId, buildingId));
  return newest.get()?.id ?? 0;
}

/** The oldest report after one, in the order in which they were put on record; those of past tables are no news. */
export function findReportAfter(db: Queryable, buildingId: number, afterId: number): ComfortReportRow | undefined {
  return db
    .select()
    .from(comfortReport)
    .where(
      and(eq(comfortReport.buildingId, buildingId), gt(comfortReport.id, afterId), ne(comfortReport.origin, "import")),
    )
    .orderBy(asc(comfortReport.id))
    .limit(1)
    .get();
}
