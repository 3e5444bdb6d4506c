import { statSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { trendsImport } from "@/app/_cli/commands/trends-import";
import type { Outcome } from "../contender";
import { contend, timed } from "./contend";

export type ImportInput = { dataFolder: string; files: string[] };

/** Of the last file given. `chunksWritten` counts the chunks that its run laid a hand on. */
export type ProductOutcome = Outcome & {
  outcome: string;
  message: string;
  rows: { rowsInFile: number; accepted: number; repaired: number; heldBack: number; rejected: number; ignored: number };
  samples: { added: number; changed: number; same: number } | null;
  findings: number;
  chunksWritten: number;
  bytes: number;
};

/** Files through the command line's import, one command each; the time is that of the last. */
await contend<ImportInput>(async ({ dataFolder, files }) => {
  process.env.SETPOINT_LEDGER_DATA = dataFolder;
  let [ms, said] = [0, ""];
  for (const file of files) {
    ms = await timed(async () => {
      said = await sayingOf(() => trendsImport([file, "--building", "1", "--accept-proposals", "--json"]));
    });
  }
  const report = JSON.parse(said.trim().split("\n").at(-1) ?? "").files[0];
  const db = new Database(path.join(dataFolder, "trend.db"), { readonly: true });
  const chunksWritten = db
    .prepare("select count(*) from chunk_undo where run = ?")
    .pluck()
    .get(report.runId ?? -1);
  db.close();
  return {
    ...report,
    findings: report.findings?.length ?? 0,
    mapped: report.mapped?.length,
    chunksWritten: report.outcome === "unchanged" ? 0 : chunksWritten,
    bytes: statSync(path.join(dataFolder, "trend.db")).size,
    ms,
  };
});

/** What a command writes to standard output. */
async function sayingOf(command: () => Promise<number>): Promise<string> {
  const write = process.stdout.write;
  const said: string[] = [];
  process.stdout.write = ((text: string | Uint8Array) => said.push(String(text)) > 0) as typeof process.stdout.write;
  try {
    await command();
  } finally {
    process.stdout.write = write;
  }
  return said.join("");
}
