import { IMPORT_KINDS, type ImportKind } from "@/db/schema/trend-import";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { LARGEST_FILE_BYTES, stageTrendFile } from "../trend-imports/stage";
import { importWeather } from "../weather/import";
import { importTable } from "./import-table";

export const isImportKind = (text: string): text is ImportKind => (IMPORT_KINDS as readonly string[]).includes(text);

/** What became of one uploaded file, in a sentence. */
export type FileOutcome = {
  fileName: string;
  state: "imported" | "unchanged" | "waiting" | "refused";
  message: string;
  runId: number | null;
};

/** Takes one uploaded file of a kind. A refusal is an outcome: the other files of the same upload go on. */
export async function takeFile(
  ctx: Context,
  buildingId: number,
  kind: ImportKind,
  file: { name: string; bytes: Uint8Array },
): Promise<FileOutcome> {
  try {
    if (file.bytes.byteLength === 0) throw new ServiceError("invalid", "The file is empty: export it again.");
    if (file.bytes.byteLength > LARGEST_FILE_BYTES)
      throw new ServiceError("invalid", "The file is over 200 MB: export shorter periods, or fewer points a file.");
    return { fileName: file.name, ...(await take(ctx, buildingId, kind, file)) };
  } catch (error) {
    if (!(error instanceof ServiceError) || error.code !== "invalid") throw error;
    return { fileName: file.name, state: "refused", message: error.message, runId: null };
  }
}

async function take(
  ctx: Context,
  buildingId: number,
  kind: ImportKind,
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
  const { state, run } = await stageTrendFile(ctx, buildingId, file);
  if (state === "refused") return { state, message: run.message, runId: run.id };
  if (state === "unchanged")
    return { state, message: "This very file was imported before: nothing to do.", runId: run.id };
  return { state, message: "Read; its points wait for their mapping.", runId: run.id };
}
