import { and, desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortLink, heldReport } from "../schema/comfort";

export type HeldReportRow = typeof heldReport.$inferSelect;
export type NewHeldReport = typeof heldReport.$inferInsert;

export function insertHeldReport(db: Queryable, row: NewHeldReport): void {
  db.insert(heldReport).values(row).run();
}

export function findHeldBySubmission(db: Queryable, submissionId: string): HeldReportRow | undefined {
  return db.select().from(heldReport).where(eq(heldReport.submissionId, submissionId)).get();
}

export function findHeldByFollowToken(db: Queryable, followToken: string): HeldReportRow | undefined {
  return db.select().from(heldReport).where(eq(heldReport.followToken, followToken)).get();
}

/** Reports kept aside in a building with the place of their link, newest first. */
export function listHeldReports(db: Queryable, buildingId: number) {
  return db
    .select({ held: heldReport, zoneId: comfortLink.zoneId, deskId: comfortLink.deskId })
    .from(heldReport)
    .innerJoin(comfortLink, eq(comfortLink.id, heldReport.linkId))
    .where(eq(heldReport.buildingId, buildingId))
    .orderBy(desc(heldReport.heldAtMs), desc(heldReport.id))
    .all();
}

export function findHeldReport(db: Queryable, buildingId: number, id: number) {
  return db
    .select({ held: heldReport, zoneId: comfortLink.zoneId, deskId: comfortLink.deskId })
    .from(heldReport)
    .innerJoin(comfortLink, eq(comfortLink.id, heldReport.linkId))
    .where(and(eq(heldReport.buildingId, buildingId), eq(heldReport.id, id)))
    .get();
}

export function deleteHeldReport(db: Queryable, id: number): void {
  db.delete(heldReport).where(eq(heldReport.id, id)).run();
}
