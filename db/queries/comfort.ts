import { and, count, desc, eq, gte, isNull, placeholder } from "drizzle-orm";
import type { Queryable } from "../client";
import { comfortLink, comfortReport, type Preference } from "../schema/comfort";
import { preparedInsert, preparedOnce } from "./prepared";

export type ComfortLinkRow = typeof comfortLink.$inferSelect;
export type NewComfortLink = typeof comfortLink.$inferInsert;
export type ComfortReportRow = typeof comfortReport.$inferSelect;
export type NewComfortReport = typeof comfortReport.$inferInsert;

export function insertComfortLink(db: Queryable, row: NewComfortLink): ComfortLinkRow {
  return db.insert(comfortLink).values(row).returning().get();
}

const selectLinkByToken = preparedOnce((db) =>
  db
    .select()
    .from(comfortLink)
    .where(eq(comfortLink.token, placeholder("token")))
    .prepare(),
);

export function findComfortLinkByToken(db: Queryable, token: string): ComfortLinkRow | undefined {
  return selectLinkByToken(db).get({ token });
}

export function findComfortLink(db: Queryable, buildingId: number, id: number): ComfortLinkRow | undefined {
  return db
    .select()
    .from(comfortLink)
    .where(and(eq(comfortLink.buildingId, buildingId), eq(comfortLink.id, id)))
    .get();
}

/** Links still in force, newest first. */
export function listComfortLinks(db: Queryable, buildingId: number): ComfortLinkRow[] {
  return db
    .select()
    .from(comfortLink)
    .where(and(eq(comfortLink.buildingId, buildingId), isNull(comfortLink.revokedAtMs)))
    .orderBy(desc(comfortLink.createdAtMs), desc(comfortLink.id))
    .all();
}

export function revokeComfortLink(db: Queryable, id: number, revokedAtMs: number): void {
  db.update(comfortLink).set({ revokedAtMs }).where(eq(comfortLink.id, id)).run();
}

/** Links of a desk go with it to another zone; reports made before stay with the zone that they were made in. */
export function moveLinksOfDesk(db: Queryable, deskId: number, zoneId: number): void {
  db.update(comfortLink).set({ zoneId }).where(eq(comfortLink.deskId, deskId)).run();
}

/** Files a report; returns it as it stands. */
export const insertComfortReport = preparedInsert(comfortReport);

export function findReportBySubmission(db: Queryable, submissionId: string): ComfortReportRow | undefined {
  return db.select().from(comfortReport).where(eq(comfortReport.submissionId, submissionId)).get();
}

export function findComfortReport(db: Queryable, buildingId: number, id: number): ComfortReportRow | undefined {
  return db
    .select()
    .from(comfortReport)
    .where(and(eq(comfortReport.buildingId, buildingId), eq(comfortReport.id, id)))
    .get();
}

/** Reports of a building, newest first; `sinceMs` limits them in time. */
export function listComfortReports(db: Queryable, buildingId: number, sinceMs = 0): ComfortReportRow[] {
  return db
    .select()
    .from(comfortReport)
    .where(and(eq(comfortReport.buildingId, buildingId), gte(comfortReport.reportedAtMs, sinceMs)))
    .orderBy(desc(comfortReport.reportedAtMs), desc(comfortReport.id))
    .all();
}

/** How often each vote was sent with each wish, by zone id. */
export function countReportsByZone(
  db: Queryable,
  buildingId: number,
): Map<number, { thermalSensation: number; preference: Preference; count: number }[]> {
  const { zoneId, thermalSensation, preference } = comfortReport;
  const rows = db
    .select({ zoneId, thermalSensation, preference, count: count() })
    .from(comfortReport)
    .where(eq(comfortReport.buildingId, buildingId))
    .groupBy(zoneId, thermalSensation, preference)
    .all();
  const found = new Map<number, Omit<(typeof rows)[number], "zoneId">[]>();
  for (const { zoneId: zone, ...vote } of rows) {
    const votes = found.get(zone) ?? [];
    votes.push(vote);
    found.set(zone, votes);
  }
  return found;
}

export function listZoneReports(db: Queryable, zoneId: number): ComfortReportRow[] {
  return db
    .select()
    .from(comfortReport)
    .where(eq(comfortReport.zoneId, zoneId))
    .orderBy(desc(comfortReport.reportedAtMs), desc(comfortReport.id))
    .all();
}

export function findReportByFollowToken(db: Queryable, followToken: string): ComfortReportRow | undefined {
  return db.select().from(comfortReport).where(eq(comfortReport.followToken, followToken)).get();
}

export function updateComfortReport(db: Queryable, id: number, changes: Partial<NewComfortReport>): void {
  db.update(comfortReport).set(changes).where(eq(comfortReport.id, id)).run();
}
