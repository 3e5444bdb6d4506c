import { and, asc, count, desc, eq, getTableColumns, inArray, isNotNull, sql } from "drizzle-orm";
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

/** Trend imports that wait for their mapping, or those of the given ids, in the order they came. */
export function listRunsToMap(db: Queryable, buildingId: number, ids?: readonly number[]): ImportRunRow[] {
  return db
    .select()
    .from(importRun)
    .where(
      and(
        eq(importRun.buildingId, buildingId),
        eq(importRun.kind, "trends"),
        ids ? inArray(importRun.id, [...ids]) : eq(importRun.state, "waiting"),
      ),
    )
    .orderBy(asc(importRun.id))
    .all();
}

/**
 * What the newest trend import that decided on each of some points said of it, by its name: taken in, or left out.
 * Undecided ones are as if they had never come. Imports are looked at newest first, and in their answers as they lie, for
 * a long history holds megabytes of them: of tonight's file yesterday's knows all points.
 */
export function lastPointChoices(
  db: Queryable,
  buildingId: number,
  names: Iterable<string>,
): Map<string, "imported" | "left-out"> {
  const open = new Set(names);
  const runs = db
    .select({ id: importRun.id })
    .from(importRun)
    .where(and(eq(importRun.buildingId, buildingId), eq(importRun.kind, "trends"), isNotNull(importRun.answers)))
    .orderBy(desc(importRun.startedAtMs), desc(importRun.id))
    .all()
    .map(({ id }) => id);
  const found = new Map<string, "imported" | "left-out">();
  for (let from = 0, count = 1; from < runs.length && open.size > 0; from += count, count *= 4) {
    for (const { name, skip } of choicesOf(db, runs.slice(from, from + count)))
      if (open.delete(name)) found.set(name, skip ? "left-out" : "imported");
  }
  return found;
}

/** Points that runs decided on, in the order of the runs. */
const choicesOf = (db: Queryable, runs: readonly number[]) =>
  db.all<{ name: string; skip: number }>(sql`
    select point.key as name, point.value ->> '$.skip' as skip
    from json_each(${JSON.stringify(runs)}) as wanted cross join ${importRun} on ${importRun.id} = wanted.value,
      json_each(${importRun.answers}, '$.points') as point
    where point.value ->> '$.undecided' is null
    order by wanted.key`);

/** A run without its long columns: for lists. */
export type ImportRunLine = Omit<ImportRunRow, "inspection" | "answers">;

const { inspection: _inspection, answers: _answers, ...lineColumns } = getTableColumns(importRun);
export const LINE_COLUMNS = lineColumns;

/** A stretch of a building's runs, newest first, and how many there are. */
export function listImportRunLines(
  db: Queryable,
  buildingId: number,
  { limit, offset }: { limit: number; offset: number },
): { lines: ImportRunLine[]; count: number } {
  const ofBuilding = eq(importRun.buildingId, buildingId);
  const lines = db
    .select(LINE_COLUMNS)
    .from(importRun)
    .where(ofBuilding)
    .orderBy(desc(importRun.startedAtMs), desc(importRun.id))
    .limit(limit)
    .offset(offset)
    .all();
  return { lines, count: db.select({ n: count() }).from(importRun).where(ofBuilding).get()?.n ?? 0 };
}

/** Trend files that wait for their mapping, oldest first. */
export function listWaitingRunLines(db: Queryable, buildingId: number): ImportRunLine[] {
  return db
    .select(LINE_COLUMNS)
    .from(importRun)
    .where(and(eq(importRun.buildingId, buildingId), eq(importRun.kind, "trends"), eq(importRun.state, "waiting")))
    .orderBy(asc(importRun.id))
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

export function listImportRows(
  db: Queryable,
  runId: number,
  { limit, offset }: { limit: number; offset: number } = { limit: -1, offset: 0 },
): ImportRowNote[] {
  return db
    .select()
    .from(importRow)
    .where(eq(importRow.runId, runId))
    .orderBy(asc(importRow.line), asc(importRow.id))
    .limit(limit)
    .offset(offset)
    .all();
}

export function countImportRows(db: Queryable, runId: number): number {
  return db.select({ n: count() }).from(importRow).where(eq(importRow.runId, runId)).get()?.n ?? 0;
}
