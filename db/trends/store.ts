import { mkdirSync } from "node:fs";
import path from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import Database from "better-sqlite3";
import type { Reading, TrendStore } from "@/lib/trends/trend-store";
import { readAsOf } from "./as-of";
import { LAST_SECOND } from "./bucket";
import { readSlice } from "./read";
import { removeSamples } from "./remove";
import { prepareSchema } from "./schema";
import { openTables, type SeriesRow, type Tables } from "./tables";
import { undoRun, undoStateOf } from "./undo";
import { openUndoLog } from "./undo-log";
import { writeSlices } from "./write";

/** Reading goes on this long before the event loop gets its turn. */
const READ_MS = 15;

export type OpenTrendStore = TrendStore & { close(): void };

/**
 * Opens `trend.db` (or `:memory:`), making it and its folder when missing. One file serves several processes on one
 * host, not over a network file system. A revision goes up by one with every commit that changes the series: once a
 * write, as a rule, and more often when a write is long enough to be committed in parts.
 */
export function openTrendStore(file: string): OpenTrendStore {
  if (file !== ":memory:") mkdirSync(path.dirname(file), { recursive: true });
  const db = new Database(file);
  prepareSchema(db, file);
  const store = { db, tables: openTables(db), undoLog: openUndoLog(db) };
  const rows = (series: readonly number[]) => store.tables.seriesRows(series);

  return {
    write: (slices, run) => writeSlices(store, slices, run),
    read: (series, from, to) => readSlices(store.tables, series, from, to),
    asOf: async (queries) => readAsOf(store.tables, queries),
    latest: async (series) => rows(series).map(latestReading),
    rev: async (series) => rows(series).map((row) => (row === undefined || row.n === 0 ? 0 : row.rev)),
    extent: async (series) => rows(series).map(extentOf),
    remove: (series, from = 0, to = LAST_SECOND + 1) => removeSamples(store, { series, from, to }),
    undo: (run) => undoRun(store, run),
    undoState: async (run) => undoStateOf(store.undoLog, run),
    close: () => void db.close(),
  };
}

async function* readSlices(tables: Tables, series: readonly number[], from: number, to: number) {
  let since = performance.now();
  for (const id of series) {
    yield readSlice(tables, id, from, to);
    if (performance.now() - since < READ_MS) continue;
    await nextTurn();
    since = performance.now();
  }
}

function latestReading(row: SeriesRow | undefined): Reading | null {
  if (row === undefined || row.last_ts === null || row.last_v === null) return null;
  return { series: row.id, ts: row.last_ts, value: row.last_v / 10 ** row.decimals };
}

function extentOf(row: SeriesRow | undefined): { firstTs: number; lastTs: number; count: number } | null {
  if (row === undefined || row.first_ts === null || row.last_ts === null) return null;
  return { firstTs: row.first_ts, lastTs: row.last_ts, count: row.n };
}
