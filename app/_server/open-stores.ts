import path from "node:path";
import { type AppDatabase, openAppDatabase } from "@/db/client";
import { openTrendStore } from "@/db/trends/store";
import { openUploadFolder, type UploadFolder } from "@/db/uploads";
import type { TrendStore } from "@/lib/trends/trend-store";

export type Stores = { db: AppDatabase; trends: TrendStore; uploads: UploadFolder };

/** Opens the stores of a data folder for this thread, and closes them when it ends. */
export function openStores(folder: string): Stores {
  const db = openAppDatabase(path.join(folder, "app.db"));
  const trends = openTrendStore(path.join(folder, "trend.db"));
  process.on("exit", () => {
    trends.close();
    db.$client.close();
  });
  return { db, trends, uploads: openUploadFolder(path.join(folder, "uploads")) };
}
