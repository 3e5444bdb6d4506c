import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { openTrendStore } from "@/db/trends/store";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { syntheticYear } from "../support/synthetic-trends";
import { medianMs, report } from "./stopwatch";

/** A year of 20 zones through the trend store, against one row a sample in a clustered table. */
export async function benchImport(): Promise<void> {
  const slices = [...syntheticYear({ zones: 20, days: 365, seed: 1 })];
  const samples = slices.reduce((sum, slice) => sum + slice.ts.length, 0);
  const folder = mkdtempSync(path.join(tmpdir(), "bench-"));
  try {
    const store = { file: path.join(folder, "trend.db"), bytes: 0 };
    const rows = { file: path.join(folder, "rows.db"), bytes: 0 };
    const storeMs = await medianMs(3, async () => {
      rmSync(store.file, { force: true });
      const trends = openTrendStore(store.file);
      await trends.write(slices, 1);
      trends.close();
      store.bytes = statSync(store.file).size;
    });
    const again = openTrendStore(store.file);
    const againMs = await medianMs(3, () => again.write(slices, 2));
    again.close();
    const rowsMs = await medianMs(1, () => {
      rmSync(rows.file, { force: true });
      insertRows(rows.file, slices);
      rows.bytes = statSync(rows.file).size;
    });

    const rate = (ms: number) => `${(samples / ms / 1000).toFixed(2)} M readings/s`;
    const size = (bytes: number) => `${(bytes / samples).toFixed(2)} bytes/reading`;
    report(`trend store, ${samples} readings`, storeMs, `${rate(storeMs)}, ${size(store.bytes)}`);
    report("the same file again", againMs, `${(againMs / storeMs).toFixed(2)} of the first import`);
    report("one row a reading, prepared inserts", rowsMs, `${rate(rowsMs)}, ${size(rows.bytes)}`);
    report(
      "trend store / rows",
      storeMs,
      `time ${(storeMs / rowsMs).toFixed(3)}, size ${(store.bytes / rows.bytes).toFixed(3)}`,
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function insertRows(file: string, slices: TrendSlice[]): void {
  const db = new Database(file);
  db.pragma("journal_mode = WAL");
  db.pragma("synchronous = NORMAL");
  db.exec("create table sample (series integer, ts integer, v integer, primary key (series, ts)) without rowid");
  const insert = db.prepare("insert or replace into sample values (?, ?, ?)");
  db.transaction(() => {
    for (const { series, ts, v } of slices) for (let i = 0; i < ts.length; i++) insert.run(series, ts[i], v[i]);
  })();
  db.close();
}
