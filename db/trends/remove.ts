import type Database from "better-sqlite3";
import { assertSeriesId, chunkIdAt, chunkPeriod, clampToStore } from "./bucket";
import type { Samples } from "./chunk-format";
import { lowerBound } from "./lower-bound";
import { readChunk, type Tables } from "./tables";
import { TimedCommits } from "./timed-commits";
import type { UndoLog } from "./undo-log";

/**
 * Removes the samples with `from <= ts < to` for good. Undoing an earlier run does not bring them back; a run that
 * wrote to a chunk of which a part was removed can no longer be undone.
 */
export async function removeSamples(
  { db, tables, undoLog }: { db: Database.Database; tables: Tables; undoLog: UndoLog },
  { series, from, to }: { series: number; from: number; to: number },
): Promise<void> {
  assertSeriesId(series);
  const [start, stop] = [clampToStore(from), clampToStore(to)];
  if (!(start < stop)) return;
  let changed = false;
  const commits = new TimedCommits(db, () => {
    if (changed) tables.refreshSeries(series);
    changed = false;
  });

  for (const { id, t0, t1 } of tables.chunkSpans(chunkIdAt(series, start), chunkIdAt(series, stop - 1))) {
    if (t1 < start || t0 >= stop) continue;
    commits.do(() => {
      const { from: first, to: end } = chunkPeriod(id);
      changed = true;
      if (start <= first && stop >= end) {
        undoLog.forgetChunk(id);
        tables.deleteChunk(id);
        return;
      }
      undoLog.giveUpRunsOf(id);
      const data = tables.chunkData(id);
      const rest = data === undefined ? null : without(readChunk(id, data), start, stop);
      if (rest === null) tables.deleteChunk(id);
      else tables.putChunk(id, rest);
    });
    if (commits.due("any")) await commits.commit();
  }
  await commits.commit();
}

function without({ ts, v, decimals }: Samples, from: number, to: number): Samples | null {
  const [i, j] = [lowerBound(ts, from), lowerBound(ts, to)];
  const count = ts.length - (j - i);
  if (count === 0) return null;
  const rest: Samples = { ts: new Float64Array(count), v: new Int32Array(count), decimals };
  rest.ts.set(ts.subarray(0, i));
  rest.ts.set(ts.subarray(j), i);
  rest.v.set(v.subarray(0, i));
  rest.v.set(v.subarray(j), i);
  return rest;
}
