import { findImportRun, type ImportRunRow } from "@/db/queries/import-runs";
import { IMPORT_KINDS, type ImportKind } from "@/db/schema/trend-import";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { receiveTrendFile } from "../trend-imports/receive";
import { importWeather } from "../weather/import";
import { importTable } from "./import-table";

/** What a file can hold. */
export type FileKind = Exclude<ImportKind, "readings">;

export const isFileKind = (text: string): text is FileKind =>
  text !== "readings" && (IMPORT_KINDS as readonly string[]).includes(text);

/** Largest table or weather year [bytes]: they are read as a whole. */
const LARGEST_TABLE_BYTES = 50_000_000;

/** What became of one uploaded file, in a sentence. A trend file is `received`: it is read in its turn. */
export type FileOutcome = {
  fileName: string;
  state: "imported" | "unchanged" | "received" | "waiting" | "refused" | "failed";
  message: string;
  runId: number | null;
};

/** Takes in or, a trend file, receives one uploaded file of a kind. A refusal is an outcome: the other files of the same upload go on. */
export async function takeFile(
  ctx: Context,
  buildingId: number,
  kind: FileKind,
  file: { name: string; bytes: Uint8Array },
): Promise<FileOutcome> {
  try {
    if (file.bytes.byteLength === 0) throw new ServiceError("invalid", "The file is empty: export it again.");
    if (kind !== "trends" && file.bytes.byteLength > LARGEST_TABLE_BYTES)
      throw new ServiceError("invalid", "The file is over 50 MB: no table of a building is that long.");
    return { fileName: file.name, ...(await take(ctx, buildingId, kind, file)) };
  } catch (error) {
    if (!(error instanceof ServiceError) || error.code !== "invalid") throw error;
    return { fileName: file.name, state: "refused", message: error.message, runId: null };
  }
}

async function take(
  ctx: Context,
  buildingId: number,
  kind: FileKind,
  file: { name: string; bytes: Uint8Array },
): Promise<Omit<FileOutcome, "fileName">> {
  if (kind === "weather") {
    const { state, station } = importWeather(ctx, buildingId, file);
    const message =
      state === "unchanged" ? "This weather year is in place already." : `Weather year of ${station} is in place.`;
    return { state, message, runId: null };
  }
  if (kind !== "trends") {
    const run = importTable(ctx, buildingId, kind, file);
    return { state: "imported", message: run.message, runId: run.id };
  }
  const kept = await ctx.uploads.saveFrom([file.bytes]);
  const { state, run } = receiveTrendFile(ctx, buildingId, { fileName: file.name, ...kept });
  if (state === "unchanged") return outcomeOf(run, "This very file was imported before: nothing to do.");
  return { ...outcomeOf(run), runId: run.id };
}

/** Outcomes of an upload as they stand now: files that were received have been read since, or not. */
export function outcomesNow(ctx: Context, buildingId: number, outcomes: readonly FileOutcome[]): FileOutcome[] {
  return outcomes.map((outcome) => {
    if (outcome.state !== "received" || outcome.runId === null) return outcome;
    const run = findImportRun(ctx.db, buildingId, outcome.runId);
    return run ? { fileName: outcome.fileName, ...outcomeOf(run) } : outcome;
  });
}

/** What became of a trend file so far, from its run. */
export function outcomeOf(run: ImportRunRow, unchanged?: string): Omit<FileOutcome, "fileName"> {
  const runId = run.id;
  switch (run.state) {
    case "done":
      return unchanged
        ? { state: "unchanged", message: unchanged, runId }
        : { state: "imported", message: run.message, runId };
    case "waiting":
      return { state: "waiting", message: "Read; its points wait for their mapping.", runId };
    case "refused":
      return { state: "refused", message: run.message, runId };
    case "cancelled":
      return { state: "unchanged", message: run.message, runId };
    case "failed":
    case "interrupted":
    case "undone":
      return { state: "failed", message: run.message, runId };
    default:
      return { state: "received", message: "Received; it is read and imported in its turn.", runId };
  }
}
