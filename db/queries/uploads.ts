import { and, asc, eq, lt, sql } from "drizzle-orm";
import type { Queryable } from "../client";
import { upload } from "../schema/upload";

export type UploadRow = typeof upload.$inferSelect;
export type NewUpload = typeof upload.$inferInsert;

export function insertUpload(db: Queryable, row: NewUpload): UploadRow {
  return db.insert(upload).values(row).returning().get();
}

export function findUploadRow(db: Queryable, buildingId: number, id: string): UploadRow | undefined {
  return db
    .select()
    .from(upload)
    .where(and(eq(upload.buildingId, buildingId), eq(upload.id, id)))
    .get();
}

export function updateUpload(db: Queryable, id: string, row: Partial<NewUpload>): void {
  db.update(upload).set(row).where(eq(upload.id, id)).run();
}

/** Uploads of a building that are not whole yet, oldest first. */
export function listReceivingUploads(db: Queryable, buildingId: number): UploadRow[] {
  return db
    .select()
    .from(upload)
    .where(and(eq(upload.buildingId, buildingId), eq(upload.state, "receiving")))
    .orderBy(asc(upload.startedAtMs), asc(upload.id))
    .all();
}

/** Bytes that the uploads under way, of all buildings, still have to bring. */
export function sumBytesToCome(db: Queryable): number {
  const bytes = sql<number>`coalesce(sum(${upload.totalBytes} - ${upload.receivedBytes}), 0)`;
  return db.select({ bytes }).from(upload).where(eq(upload.state, "receiving")).get()?.bytes ?? 0;
}

/** Uploads that are not whole and of which no part has come since a time. */
export function listSilentUploads(db: Queryable, beforeMs: number): UploadRow[] {
  return db
    .select()
    .from(upload)
    .where(and(eq(upload.state, "receiving"), lt(upload.lastPartAtMs, beforeMs)))
    .all();
}
