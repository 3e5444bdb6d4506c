import type Database from "better-sqlite3";

/** Runs that can be undone; older ones give their rows up. */
const RUNS_KEPT = 5;

export type UndoLog = ReturnType<typeof openUndoLog>;

/** Keeps what stood in a chunk before a run first wrote to it. */
export function openUndoLog(db: Database.Database) {
  const insertRun = db.prepare("insert or ignore into run_log (run, undoable) values (?, 1)");
  const selectRun = db.prepare<[number], number>("select undoable from run_log where run = ?").pluck();
  const deleteRun = db.prepare("delete from run_log where run = ?");
  const closeRun = db.prepare("update run_log set undoable = 0 where run = ?");
  const deleteRows = db.prepare("delete from chunk_undo where run = ?");
  const selectOldRuns = db
    .prepare<[number, number], number>(
      "select run from run_log where undoable = 1 and run <> ? order by run desc limit -1 offset ?",
    )
    .pluck();
  const insertRow = db.prepare("insert or ignore into chunk_undo (run, chunk_id, before) values (?, ?, ?)");
  const selectWriters = db
    .prepare<[number], number>("select run from chunk_undo where chunk_id = ? order by rowid desc")
    .pluck();
  const selectRows = db.prepare<[number], { chunk_id: number; before: Buffer | null }>(
    "select chunk_id, before from chunk_undo where run = ? order by chunk_id limit 500",
  );
  const selectLater = db
    .prepare<[number], number>(
      `select later.run from chunk_undo mine join chunk_undo later
       on later.chunk_id = mine.chunk_id and later.rowid > mine.rowid where mine.run = ? limit 1`,
    )
    .pluck();
  const deleteRow = db.prepare("delete from chunk_undo where run = ? and chunk_id = ?");
  const deleteChunkRows = db.prepare("delete from chunk_undo where chunk_id = ?");

  const giveUp = (run: number): void => {
    closeRun.run(run);
    deleteRows.run(run);
  };

  return {
    /** Call before a run's first change. Gives up the rows of the oldest runs. */
    begin(run: number): void {
      if (insertRun.run(run).changes === 0) return;
      for (const old of selectOldRuns.all(run, RUNS_KEPT - 1)) giveUp(old);
    },

    /** Keeps `before` unless the run has written to the chunk already. */
    keep(run: number, chunkId: number, before: Buffer | null): void {
      if (selectRun.get(run) !== 1) return;
      if (insertRow.run(run, chunkId, before).changes === 1) return;
      const latest = selectWriters.get(chunkId);
      if (latest === run) return;
      throw new Error(`run ${latest} has written to what run ${run} wrote before: write the rest as a run of its own`);
    },

    /** Whether the run can be undone: `nothing` when it changed nothing (or was undone before). */
    state(run: number): "nothing" | "undoable" | "given-up" {
      const undoable = selectRun.get(run);
      if (undoable === undefined) return "nothing";
      return undoable === 1 ? "undoable" : "given-up";
    },

    /** A run that wrote to the same chunks afterwards. */
    laterRun: (run: number) => selectLater.get(run),
    /** Up to 500 of the run's rows, by chunk. */
    rows: (run: number) => selectRows.all(run),
    restored: (run: number, chunkId: number) => deleteRow.run(run, chunkId),
    finish: (run: number) => deleteRun.run(run),

    /** A chunk was removed on purpose: undoing must not bring it back. */
    forgetChunk: (chunkId: number) => deleteChunkRows.run(chunkId),

    /** A chunk was cut on purpose: the runs that wrote to it can no longer be undone as a whole. */
    giveUpRunsOf(chunkId: number): void {
      for (const run of selectWriters.all(chunkId)) giveUp(run);
    },
  };
}
