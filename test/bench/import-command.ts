import { trendsImport } from "@/app/_cli/commands/trends-import";
import type { FileImport } from "@/lib/services/trend-imports/import-file";

/** One file through the command line's `trends import`, in this process; the report that it prints. */
export async function importByCommand(dataFolder: string, file: string): Promise<FileImport> {
  process.env.SETPOINT_LEDGER_DATA = dataFolder;
  const write = process.stdout.write;
  const said: string[] = [];
  process.stdout.write = ((text: string | Uint8Array) => said.push(String(text)) > 0) as typeof process.stdout.write;
  try {
    await trendsImport([file, "--building", "1", "--accept-proposals", "--json"]);
  } finally {
    process.stdout.write = write;
  }
  const last = said.join("").trim().split("\n").at(-1) ?? "";
  return JSON.parse(last).files[0];
}
