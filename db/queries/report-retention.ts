import { and, eq, inArray, isNotNull, lt, ne, or } from "drizzle-orm";
import type { ReportSource } from "@/lib/comfort-reports/person-days";
import type { Queryable } from "../client";
import { comfortLink, comfortReport, heldReport, reportRetention } from "../schema/comfort";

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

/** Reports made before a moment that still tell their desk, by itself or by the link of a desk. */
export function listReportsWithDesk(db: Queryable, buildingId: number, madeBeforeMs: number): ReportSource[] {
  const { id, deskId, linkId, reportedAtMs, personDay } = comfortReport;
  return db
    .select({ id, deskId, linkId, reportedAtMs, personDay })
    .from(comfortReport)
    .leftJoin(comfortLink, eq(comfortLink.id, linkId))
    .where(
      and(
        eq(comfortReport.buildingId, buildingId),
        lt(reportedAtMs, madeBeforeMs),
        or(isNotNull(deskId), isNotNull(comfortLink.deskId)),
      ),
    )
    .all();
}

/** Deletes the desk of reports, and the link that would tell it; `personDay` stands for both. */
export function deleteReportDesk(db: Queryable, ids: readonly number[], personDay: string): void {
  db.update(comfortReport)
    .set({ deskId: null, linkId: null, personDay })
    .where(inArray(comfortReport.id, [...ids]))
    .run();
}
