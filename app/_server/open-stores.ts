import path from "node:path";
import { type AppDatabase, openAppDatabase } from "@/db/client";
import { openResultStore, type ResultStore } from "@/db/results";
import { openTrendStore } from "@/db/trends/store";
import { openUploadFolder, type UploadFolder } from "@/db/uploads";
import type { TrendStore } from "@/lib/trends/trend-store";

export type Stores = { db: AppDatabase; trends: TrendStore; uploads: UploadFolder; results: ResultStore };

/** Pages of the write-ahead log at which the answering thread moves them itself, when nobody else has: 64 MB. */
const LONG_LOG_PAGES = 16_000;

/**
 * Opens the stores of a data folder for this thread, and closes them when it ends. A thread that answers people leaves
 * the checkpoints of `app.db` to the background thread: one takes two waits for the disk, in the middle of a report.
 */
export function openStores(folder: string, { answersPeople = false } = {}): Stores {
  const checkpointPages = answersPeople ? LONG_LOG_PAGES : undefined;
  const db = openAppDatabase(path.join(folder, "app.db"), { checkpointPages });
  const trends = openTrendStore(path.join(folder, "trend.db"));
  const results = openResultStore(path.join(folder, "results.db"));
  process.on("exit", () => {
    results.close();
    trends.close();
    db.$client.close();
  });
  return { db, trends, uploads: openUploadFolder(path.join(folder, "uploads")), results };
}
