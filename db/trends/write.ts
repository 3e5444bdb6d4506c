import type Database from "better-sqlite3";
import type { TrendSlice, WriteStats } from "@/lib/trends/trend-store";
import { BUCKET_SECONDS, chunkIdAt } from "./bucket";
import type { Samples } from "./chunk-format";
import { lowerBound } from "./lower-bound";
import { type MergeCounts, mergeSamples } from "./merge";
import { orderRows } from "./order-rows";
import { SampleRoom } from "./sample-room";
import { rescaleNamed, SliceBuffer } from "./slice-buffer";
import { type ChunkEnd, lastOf, readChunk, type Tables } from "./tables";
import { TimedCommits } from "./timed-commits";
import { Touched } from "./touched";
import type { UndoLog } from "./undo-log";

/** Samples held in memory before they are merged and written: 24 MB. */
const FLUSH_SAMPLES = 2_000_000;

/** Samples of one series in a row by which slices come series by series: some chunks of most logs are whole then. */
const LONG_RUN = 8_192;

/** Of slices that come series by series, samples that are written together: few enough to stay near the processor. */
const FLUSH_SERIES = 200_000;

type Store = { db: Database.Database; tables: Tables; undoLog: UndoLog };

/** What goes on from one flush of a write to the next. */
type Writing = { run: number; buffer: SliceBuffer; touched: Touched; stats: WriteStats; rooms: Rooms };

/** For the chunk at hand as it stood, and as it will be. */
type Rooms = { before: SampleRoom; merged: SampleRoom };

/** Merges slices into the stored chunks. What was committed before an error stays, and can be undone by its run. */
export async function writeSlices(
  store: Store,
  slices: AsyncIterable<TrendSlice> | Iterable<TrendSlice>,
  run: number,
  flushSamples = FLUSH_SAMPLES,
): Promise<WriteStats> {
  const stats = { added: 0, changed: 0, same: 0, repeated: { same: 0, changed: 0 }, chunksWritten: 0 };
  const rooms = { before: new SampleRoom(), merged: new SampleRoom() };
  const writing: Writing = { run, buffer: new SliceBuffer(flushSamples), touched: new Touched(), stats, rooms };
  let latest = { series: 0, samples: 0 };
  for await (const slice of slices) {
    if (latest.series !== slice.series) {
      if (latest.samples >= LONG_RUN && writing.buffer.sampleCount >= FLUSH_SERIES) await flush(store, writing);
      latest = { series: slice.series, samples: 0 };
    }
    latest.samples += slice.ts.length;
    for (let taken = writing.buffer.add(slice); ; taken = writing.buffer.add(slice, taken)) {
      if (writing.buffer.full) await flush(store, writing);
      if (taken === slice.ts.length) break;
    }
  }
  await flush(store, writing, true);
  return stats;
}

async function flush(
  { db, tables, undoLog }: Store,
  { run, buffer, touched, stats, rooms }: Writing,
  isLast = false,
): Promise<void> {
  const changed = new Map<number, ChunkEnd>();
  const commits = new TimedCommits(db, () => {
    for (const [series, written] of changed) tables.refreshSeries(series, written);
    changed.clear();
  });

  const mergeIn = (series: number, part: Samples): void => {
    const id = chunkIdAt(series, part.ts[0] as number);
    const data = tables.chunkData(id);
    const before = data === undefined ? null : readChunk(id, data, rooms.before);
    const merge = mergeSamples(before, part, touched.given(id), rooms.merged);
    // A flush lays its hand on a chunk once: only a later one has to be told.
    if (!isLast) touched.note(id, before, part, merge);
    addUp(stats, merge);
    if (merge.merged === null) return;
    undoLog.begin(run);
    undoLog.keep(run, id, data ?? null);
    tables.putChunk(id, merge.merged);
    // Parts of a series come in the order of their chunks.
    changed.set(series, lastOf(id, merge.merged));
    stats.chunksWritten++;
  };

  for (const { series, rows } of buffer.take()) {
    const { repeated, ...ordered } = orderRows(rows, rows.ascends);
    addUp(stats, { added: 0, changed: 0, same: 0, repeated });
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

function addUp(stats: WriteStats, { added, changed, same, repeated }: MergeCounts): void {
  stats.added += added;
  stats.changed += changed;
  stats.same += same;
  stats.repeated.same += repeated.same;
  stats.repeated.changed += repeated.changed;
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
    const stop = start + lowerBound(ts.subarray(start), end);
    yield { ts: ts.subarray(start, stop), v: v.subarray(start, stop), decimals };
    start = stop;
  }
}
