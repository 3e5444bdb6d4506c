import type Database from "better-sqlite3";
import type { UndoState } from "@/lib/trends/trend-store";
import { chunkPeriod } from "./bucket";
import { readChunk, type Tables } from "./tables";
import { TimedCommits } from "./timed-commits";
import type { UndoLog } from "./undo-log";

/**
 * Puts back the chunks that a run changed. Refused when a later run wrote to one of them, or when the run is too old.
 * A run that changed nothing, or was undone before, is no error; an undo that was cut off can be repeated.
 */
export async function undoRun(
  { db, tables, undoLog }: { db: Database.Database; tables: Tables; undoLog: UndoLog },
  run: number,
): Promise<void> {
  const state = undoLog.state(run);
  if (state === "nothing") return;
  if (state === "given-up") {
    throw new Error(
      `run ${run} can no longer be undone: several runs came after it, or its readings were removed in part`,
    );
  }
  const changedSeries = new Set<number>();
  const commits = new TimedCommits(db, () => {
    for (const series of changedSeries) tables.refreshSeries(series);
    changedSeries.clear();
  });

  for (let rows = undoLog.rows(run); rows.length > 0; rows = undoLog.rows(run)) {
    for (const { chunk_id: id, before } of rows) {
      commits.do(() => {
        assertNewest(undoLog, run);
        if (before === null) tables.deleteChunk(id);
        else tables.putChunk(id, readChunk(id, before), before);
        undoLog.restored(run, id);
        changedSeries.add(chunkPeriod(id).series);
      });
      if (commits.due("any")) await commits.commit();
    }
  }
  commits.do(() => undoLog.finish(run));
  await commits.commit();
}

export function undoStateOf(undoLog: UndoLog, run: number): UndoState {
  const status = undoLog.state(run);
  const by = status === "undoable" ? undoLog.laterRun(run) : undefined;
  return by === undefined ? { status } : { status: "blocked", by };
}

function assertNewest(undoLog: UndoLog, run: number): void {
  const later = undoLog.laterRun(run);
  if (later === undefined) return;
  throw new Error(
    `run ${run} cannot be undone: run ${later} has written to the same trends since. Undo run ${later} first`,
  );
}
