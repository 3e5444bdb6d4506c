import type Database from "better-sqlite3";
import type { TrendSlice, WriteStats } from "@/lib/trends/trend-store";
import { BUCKET_SECONDS, chunkIdAt } from "./bucket";
import type { Samples } from "./chunk-format";
import { mergeSamples } from "./merge";
import { orderRows } from "./order-rows";
import { rescaleNamed, SliceBuffer } from "./slice-buffer";
import { readChunk, type Tables } from "./tables";
import { TimedCommits } from "./timed-commits";
import type { UndoLog } from "./undo-log";

/** Samples held in memory before they are merged and written: about 50 MB. */
const FLUSH_SAMPLES = 4_000_000;

/**
 * What a write did. Times given twice count once within a flush, by the row that stands in the end; `superseded`
 * counts the others.
 */
export type StoreWriteStats = WriteStats & { superseded: number };

/** Merges slices into the stored chunks. What was committed before an error stays, and can be undone by its run. */
export async function writeSlices(
  store: { db: Database.Database; tables: Tables; undoLog: UndoLog },
  slices: AsyncIterable<TrendSlice> | Iterable<TrendSlice>,
  run: number,
): Promise<StoreWriteStats> {
  const stats: StoreWriteStats = { added: 0, changed: 0, same: 0, chunksWritten: 0, superseded: 0 };
  const buffer = new SliceBuffer();
  for await (const slice of slices) {
    buffer.add(slice);
    if (buffer.sampleCount >= FLUSH_SAMPLES) await flush(store, buffer, run, stats);
  }
  await flush(store, buffer, run, stats);
  store.db.pragma("wal_checkpoint(PASSIVE)");
  return stats;
}

async function flush(
  { db, tables, undoLog }: { db: Database.Database; tables: Tables; undoLog: UndoLog },
  buffer: SliceBuffer,
  run: number,
  stats: StoreWriteStats,
): Promise<void> {
  const changedSeries = new Set<number>();
  const commits = new TimedCommits(db, () => {
    for (const series of changedSeries) tables.refreshSeries(series);
    changedSeries.clear();
  });

  const mergeIn = (series: number, part: Samples): void => {
    const id = chunkIdAt(series, part.ts[0] as number);
    const data = tables.chunkData(id);
    const before = data === undefined ? null : readChunk(id, data);
    const { merged, added, changed, same } = mergeSamples(before, part);
    stats.added += added;
    stats.changed += changed;
    stats.same += same;
    if (merged === null) return;
    undoLog.begin(run);
    undoLog.keep(run, id, data ?? null);
    tables.putChunk(id, merged);
    changedSeries.add(series);
    stats.chunksWritten++;
  };

  for (const { series, rows } of buffer.take()) {
    const { superseded, ...ordered } = orderRows(rows);
    stats.superseded += superseded;
    for (const part of splitByBucket({ ...ordered, decimals: rows.decimals })) {
      commits.do(() => {
        assertFits(tables, series, part);
        mergeIn(series, part);
      });
      if (commits.due("any")) await commits.commit();
    }
    if (commits.due("good")) await commits.commit();
  }
  await commits.commit();
}

/** Refuses samples that could not be read together with the rest of their series, at the most decimals that either keeps. */
function assertFits(tables: Tables, series: number, part: Samples): void {
  const kept = tables.series(series)?.decimals ?? part.decimals;
  if (part.decimals < kept) rescaleNamed(series, part, kept);
  if (part.decimals <= kept) return;
  for (const { decimals, largest } of tables.largestByDecimals(series)) {
    const extreme = { ts: new Float64Array(1), v: Int32Array.of(largest), decimals };
    if (decimals < part.decimals) rescaleNamed(series, extreme, part.decimals);
  }
}

function* splitByBucket({ ts, v, decimals }: Samples): Generator<Samples> {
  let start = 0;
  while (start < ts.length) {
    const end = (Math.floor((ts[start] as number) / BUCKET_SECONDS) + 1) * BUCKET_SECONDS;
    let stop = start + 1;
    while (stop < ts.length && (ts[stop] as number) < end) stop++;
    yield { ts: ts.subarray(start, stop), v: v.subarray(start, stop), decimals };
    start = stop;
  }
}
