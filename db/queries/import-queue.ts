import { and, asc, eq, gt, inArray, isNotNull, isNull, max, ne, or, placeholder, type SQL } from "drizzle-orm";
import type { Queryable } from "../client";
import { type ImportState, importRun } from "../schema/trend-import";
import { type ImportRunLine, type ImportRunRow, LINE_COLUMNS, type NewImportRun } from "./import-runs";
import { preparedOnce, preparedUpdate } from "./prepared";

const selectRun = preparedOnce((db) =>
  db
    .select()
    .from(importRun)
    .where(eq(importRun.id, placeholder("id")))
    .prepare(),
);
const selectRunLine = preparedOnce((db) =>
  db
    .select(LINE_COLUMNS)
    .from(importRun)
    .where(eq(importRun.id, placeholder("id")))
    .prepare(),
);

/** A run by its id alone: for those who work off the queue of all buildings. */
export function findRun(db: Queryable, id: number): ImportRunRow | undefined {
  return selectRun(db).get({ id });
}

/** The same without its long columns. */
export function findRunLine(db: Queryable, id: number): ImportRunLine | undefined {
  return selectRunLine(db).get({ id });
}

/** Whether it was said what the points of a run's file are. */
export function hasAnswers(db: Queryable, id: number): boolean {
  const { answers } = importRun;
  const row = db
    .select({ id: importRun.id })
    .from(importRun)
    .where(and(eq(importRun.id, id), isNotNull(answers)))
    .get();
  return row !== undefined;
}

/** The next run to work on: first what is to be withdrawn, then the oldest that was received or queued. */
export function nextInQueue(db: Queryable): { id: number; state: ImportState; withdraw: boolean } | undefined {
  const columns = { id: importRun.id, state: importRun.state };
  const first = (states: ImportState[], asked: boolean) =>
    db
      .select(columns)
      .from(importRun)
      .where(
        and(
          inArray(importRun.state, states),
          eq(importRun.kind, "trends"),
          isNull(importRun.owner),
          asked ? isNotNull(importRun.withdrawalAskedBy) : isNull(importRun.withdrawalAskedBy),
        ),
      )
      .orderBy(asc(importRun.id))
      .limit(1)
      .get();
  const withdrawn = first(["received", "queued", "done", "interrupted", "failed"], true);
  if (withdrawn) return { ...withdrawn, withdraw: true };
  const next = first(["received", "queued"], false);
  return next && { ...next, withdraw: false };
}

/** Runs that somebody works on, or did when the program ended. */
export function listOwnedRuns(
  db: Queryable,
): Pick<ImportRunRow, "id" | "state" | "owner" | "heartbeatAtMs" | "attempts">[] {
  const { id, state, owner, heartbeatAtMs, attempts } = importRun;
  return db
    .select({ id, state, owner, heartbeatAtMs, attempts })
    .from(importRun)
    .where(or(isNotNull(importRun.owner), inArray(importRun.state, ["inspecting", "running"])))
    .all();
}

/** Another run whose samples are being stored at this moment. */
export function otherRunningRun(
  db: Queryable,
  id: number,
): { id: number; owner: string | null; heartbeatAtMs: number | null } | undefined {
  return db
    .select({ id: importRun.id, owner: importRun.owner, heartbeatAtMs: importRun.heartbeatAtMs })
    .from(importRun)
    .where(and(eq(importRun.state, "running"), ne(importRun.id, id)))
    .get();
}

const updateOwn = preparedUpdate(
  importRun,
  and(eq(importRun.id, placeholder("own id")), eq(importRun.owner, placeholder("own owner"))) as SQL,
);

/** Changes a run that `owner` works on; false when it is no longer this owner's. */
export function updateOwnRun(db: Queryable, id: number, owner: string, row: Partial<NewImportRun>): boolean {
  return updateOwn(db, row, { "own id": id, "own owner": owner }) === 1;
}

export function withdrawalAsked(db: Queryable, id: number): string | null {
  const row = db.select({ by: importRun.withdrawalAskedBy }).from(importRun).where(eq(importRun.id, id)).get();
  return row?.by ?? null;
}

/** Runs of a building that are in the queue, worked on or to be withdrawn, oldest first; without their long columns. */
export function listUnsettledRuns(db: Queryable, buildingId: number): ImportRunLine[] {
  return db
    .select(LINE_COLUMNS)
    .from(importRun)
    .where(
      and(
        eq(importRun.buildingId, buildingId),
        eq(importRun.kind, "trends"),
        or(
          inArray(importRun.state, ["received", "inspecting", "queued", "running"]),
          isNotNull(importRun.withdrawalAskedBy),
        ),
      ),
    )
    .orderBy(asc(importRun.id))
    .all();
}

/** Whether samples of a trend file are being stored into a building, or will be as soon as those of another are. */
export function isStoredInto(db: Queryable, buildingId: number): boolean {
  const { id, state, kind } = importRun;
  const some = db
    .select({ id })
    .from(importRun)
    .where(and(inArray(state, ["queued", "running"]), eq(kind, "trends"), eq(importRun.buildingId, buildingId)))
    .limit(1)
    .get();
  return some !== undefined;
}

/** Buildings whose trends an import changed that ended after a moment, and when the newest ended. */
export function listBuildingsImportedSince(
  db: Queryable,
  sinceMs: number,
): { buildingIds: number[]; newestMs: number } {
  const { buildingId, finishedAtMs, state } = importRun;
  const rows = db
    .select({ buildingId, newestMs: max(finishedAtMs) })
    .from(importRun)
    .where(and(inArray(state, ["done", "undone"]), eq(importRun.kind, "trends"), gt(finishedAtMs, sinceMs)))
    .groupBy(buildingId)
    .all();
  return {
    buildingIds: rows.map((row) => row.buildingId),
    newestMs: Math.max(0, ...rows.map((row) => row.newestMs ?? 0)),
  };
}
