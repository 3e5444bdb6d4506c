import { statSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import type { FileImport } from "@/lib/services/trend-imports/import-file";
import type { Outcome } from "../contender";

export type ProductInput = { dataFolder: string; files: string[] };

/** Of the last file given. `chunksWritten` counts the chunks that its run laid a hand on. */
export type ProductOutcome = Outcome &
  Pick<FileImport, "outcome" | "message" | "samples"> & {
    rows: NonNullable<FileImport["rows"]> | null;
    findings: number;
    chunksWritten: number;
    bytes: number;
  };

/** What an import did to a data folder that nobody has open. */
export function outcomeOf(dataFolder: string, report: FileImport): Omit<ProductOutcome, "ms" | "cpuMs" | "peakMb"> {
  const { outcome, message, samples, rows, findings, runId } = report;
  const db = new Database(path.join(dataFolder, "trend.db"), { readonly: true });
  const written = db.prepare("select count(*) from chunk_undo where run = ?").pluck();
  const chunksWritten = outcome === "imported" ? Number(written.get(runId)) : 0;
  db.close();
  const bytes = statSync(path.join(dataFolder, "trend.db")).size;
  return { outcome, message, samples, rows, findings: findings?.length ?? 0, chunksWritten, bytes };
}
