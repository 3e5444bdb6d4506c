import { statSync } from "node:fs";
import type { ImportRunRow } from "@/db/queries/import-runs";
import { THREAD_BYTES, type UploadBytes } from "@/db/uploads";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ReadAhead } from "./read-ahead";
import { earlierRun, receiveTrendFile } from "./receive";
import { settleRun } from "./settle-run";
import { type Work, workInline } from "./work";

/** A file from somewhere: its bytes, or the path that they lie at. */
export type BroughtFile = { name: string; bytes: UploadBytes | Uint8Array };

/** `settled`: it has got past its mapping already, or somebody has cancelled it; its own state says which. */
export type StagedFile = { state: "unchanged" | "waiting" | "refused" | "settled"; run: ImportRunRow };

/**
 * Takes a trend file in here and now: keeps it as it came, reads what it holds and what has to be asked, and stores no
 * sample yet. A file whose bytes were imported before changes nothing, unless it is to be taken `again` (for points
 * left out then).
 */
export async function stageTrendFile(
  ctx: Context,
  buildingId: number,
  file: BroughtFile,
  { again = false, work = workInline(ctx) }: { again?: boolean; work?: Work } = {},
): Promise<StagedFile> {
  requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const taking = ctx.uploads.takeFrom(file.bytes instanceof Uint8Array ? [file.bytes] : file.bytes);
  // It is waited for below.
  taking.catch(() => {});
  const reading = readAheadOf(file, timeZone);
  try {
    const { toDisk, ...kept } = await taking;
    const received = receiveTrendFile(ctx, buildingId, { fileName: file.name, ...kept }, { again });
    if (received.state !== "received") reading?.giveUp();
    else if (reading) work.ahead = { fileName: file.name, sha256: kept.sha256, reading };
    const onDisk = toDisk();
    // It goes there while the file is read; a failure is told below.
    onDisk.catch(() => {});
    const run = received.state === "unchanged" ? received.run : await settleRun(ctx, received.run.id, work);
    await onDisk;
    if (received.state === "unchanged") return { state: "unchanged", run };
    return stagedAs(ctx, run);
  } finally {
    reading?.giveUp();
    work.ahead = null;
  }
}

/** Begins to read a file that is large enough for its copy to take long. */
function readAheadOf({ name: fileName, bytes }: BroughtFile, timeZone: string): ReadAhead | null {
  if (typeof bytes !== "string" || statSync(bytes).size < THREAD_BYTES) return null;
  return new ReadAhead(bytes, { fileName, timeZone });
}

function stagedAs(ctx: Context, run: ImportRunRow): StagedFile {
  if (run.state === "waiting" || run.state === "refused") return { state: run.state, run };
  const first = run.state === "cancelled" ? earlierRun(ctx.db, run.buildingId, run, run.id) : null;
  return first
    ? { state: first.state === "waiting" ? "waiting" : "settled", run: first.run }
    : { state: "settled", run };
}
