import { and, eq, isNotNull, lt, ne, or } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortReport, heldReport, reportRetention } from "../schema/comfort";

export type RetentionRow = typeof reportRetention.$inferSelect;

export function findReportRetention(db: Queryable, buildingId: number): RetentionRow | undefined {
  return db.select().from(reportRetention).where(eq(reportRetention.buildingId, buildingId)).get();
}

export function upsertReportRetention(db: Queryable, row: RetentionRow): void {
  db.insert(reportRetention).values(row).onConflictDoUpdate({ target: reportRetention.buildingId, set: row }).run();
}

/** Deletes reply addresses of reports closed before a moment, and of reports made before another, closed or not. */
export function deleteReplyAddresses(
  db: Queryable,
  buildingId: number,
  { closedBeforeMs, madeBeforeMs }: { closedBeforeMs: number; madeBeforeMs: number },
): number {
  const isOver = or(
    and(eq(comfortReport.state, "closed"), lt(comfortReport.closedAtMs, closedBeforeMs)),
    lt(comfortReport.reportedAtMs, madeBeforeMs),
  );
  return db
    .update(comfortReport)
    .set({ replyAddress: null })
    .where(and(eq(comfortReport.buildingId, buildingId), isNotNull(comfortReport.replyAddress), isOver))
    .run().changes;
}

/** Deletes the notes of reports made before a moment. */
export function deleteReportNotes(db: Queryable, buildingId: number, madeBeforeMs: number): number {
  return db
    .update(comfortReport)
    .set({ note: "" })
    .where(
      and(
        eq(comfortReport.buildingId, buildingId),
        ne(comfortReport.note, ""),
        lt(comfortReport.reportedAtMs, madeBeforeMs),
      ),
    )
    .run().changes;
}

/** Deletes reports that were kept aside before a moment and that nobody took in. */
export function deleteOldHeldReports(db: Queryable, buildingId: number, heldBeforeMs: number): number {
  return db
    .delete(heldReport)
    .where(and(eq(heldReport.buildingId, buildingId), lt(heldReport.heldAtMs, heldBeforeMs)))
    .run().changes;
}
