import path from "node:path";
import { openAppDatabase } from "@/db/client";
import { openResultStore } from "@/db/results";
import { openTrendStore } from "@/db/trends/store";
import { openUploadFolder } from "@/db/uploads";
import type { Context } from "@/lib/services/context";

/** Opens the stores of the data folder for a command, runs it as the command line, and closes them. */
export async function withContext<T>(work: (ctx: Context, dataFolder: string) => Promise<T>): Promise<T> {
  const dataFolder = path.resolve(process.env.SETPOINT_LEDGER_DATA ?? "data");
  const db = openAppDatabase(path.join(dataFolder, "app.db"));
  const trends = openTrendStore(path.join(dataFolder, "trend.db"));
  const results = openResultStore(path.join(dataFolder, "results.db"));
  try {
    const uploads = openUploadFolder(path.join(dataFolder, "uploads"));
    const actor = { kind: "command-line" as const, name: "command line" };
    return await work({ db, trends, uploads, results, actor, now: Date.now() }, dataFolder);
  } finally {
    results.close();
    trends.close();
    db.$client.close();
  }
}
