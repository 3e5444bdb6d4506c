import { and, asc, desc, eq, inArray } from "drizzle-orm";
import type { Queryable } from "../client";
import { importRow, importRun } from "../schema/trend-import";

export type ImportRunRow = typeof importRun.$inferSelect;
export type NewImportRun = typeof importRun.$inferInsert;
export type ImportRowNote = typeof importRow.$inferSelect;
export type NewImportRowNote = Omit<typeof importRow.$inferInsert, "runId">;

export function insertImportRun(db: Queryable, row: NewImportRun): ImportRunRow {
  return db.insert(importRun).values(row).returning().get();
}

export function updateImportRun(db: Queryable, id: number, row: Partial<NewImportRun>): void {
  db.update(importRun).set(row).where(eq(importRun.id, id)).run();
}

export function findImportRun(db: Queryable, buildingId: number, id: number): ImportRunRow | undefined {
  return db
    .select()
    .from(importRun)
    .where(and(eq(importRun.buildingId, buildingId), eq(importRun.id, id)))
    .get();
}

export function listImportRuns(db: Queryable, buildingId: number): ImportRunRow[] {
  return db
    .select()
    .from(importRun)
    .where(eq(importRun.buildingId, buildingId))
    .orderBy(desc(importRun.startedAtMs), desc(importRun.id))
    .all();
}

/** Runs of a file (by content) in the given states, newest first. */
export function findRunsOfFile(
  db: Queryable,
  buildingId: number,
  sha256: string,
  states: readonly ImportRunRow["state"][],
): ImportRunRow[] {
  return db
    .select()
    .from(importRun)
    .where(
      and(eq(importRun.buildingId, buildingId), eq(importRun.sha256, sha256), inArray(importRun.state, [...states])),
    )
    .orderBy(desc(importRun.id))
    .all();
}

/** Runs of any building that were brought the same bytes. */
export function findRunsWithBytes(db: Queryable, sha256: string): Pick<ImportRunRow, "id" | "state">[] {
  return db
    .select({ id: importRun.id, state: importRun.state })
    .from(importRun)
    .where(eq(importRun.sha256, sha256))
    .all();
}

export function insertImportRows(db: Queryable, runId: number, rows: readonly NewImportRowNote[]): void {
  if (rows.length === 0) return;
  db.insert(importRow)
    .values(rows.map((row) => ({ ...row, runId })))
    .run();
}

export function deleteImportRows(db: Queryable, runId: number): void {
  db.delete(importRow).where(eq(importRow.runId, runId)).run();
}

export function listImportRows(db: Queryable, runId: number): ImportRowNote[] {
  return db
    .select()
    .from(importRow)
    .where(eq(importRow.runId, runId))
    .orderBy(asc(importRow.line), asc(importRow.id))
    .all();
}
