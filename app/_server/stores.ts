import path from "node:path";
import { type AppDatabase, openAppDatabase } from "@/db/client";
import { openTrendStore } from "@/db/trends/store";
import { openUploadFolder, type UploadFolder } from "@/db/uploads";

import type { TrendStore } from "@/lib/trends/trend-store";
import { dataFolder } from "./data-folder";

export type Stores = { db: AppDatabase; trends: TrendStore; uploads: UploadFolder };

const KEY = Symbol.for("setpoint-ledger.stores");
const shared = globalThis as typeof globalThis & { [KEY]?: Stores };

/** The stores of the data folder, opened at the first request and shared by every copy of this module. */
export function getStores(): Stores {
  shared[KEY] ??= openStores(dataFolder());
  return shared[KEY];
}

function openStores(folder: string): Stores {
  const db = openAppDatabase(path.join(folder, "app.db"));
  const trends = openTrendStore(path.join(folder, "trend.db"));

  process.on("exit", () => {
    trends.close();
    db.$client.close();
  });
  return { db, trends, uploads: openUploadFolder(path.join(folder, "uploads")) };
}
