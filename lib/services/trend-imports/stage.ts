import { createHash } from "node:crypto";
import { findRunsOfFile, type ImportRunRow, insertImportRun } from "@/db/queries/import-runs";
import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

/** Largest file taken in one go [bytes]. */
export const LARGEST_FILE_BYTES = 200_000_000;

export type StagedFile =
  | { state: "unchanged"; run: ImportRunRow }
  | { state: "waiting"; run: ImportRunRow }
  | { state: "refused"; run: ImportRunRow };

/**
 * Takes a trend file in: keeps it as it came, reads what it holds and what has to be asked, and stores no sample yet.
 * A file whose bytes were imported before changes nothing.
 */
export async function stageTrendFile(
  ctx: Context,
  buildingId: number,
  file: { name: string; bytes: Uint8Array },
): Promise<StagedFile> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const sha256 = createHash("sha256").update(file.bytes).digest("hex");
  const [earlier] = findRunsOfFile(ctx.db, buildingId, sha256, ["done"]);
  if (earlier) return { state: "unchanged", run: earlier };
  const [waiting] = findRunsOfFile(ctx.db, buildingId, sha256, ["waiting"]);
  if (waiting) return { state: "waiting", run: waiting };
  const run = {
    buildingId,
    kind: "trends" as const,
    fileName: file.name,
    sha256,
    byteCount: file.bytes.byteLength,
    startedAtMs: ctx.now,
    startedBy: actorName(actor),
  };
  const inspection = await inspectTrendFile({ fileName: file.name, bytes: file.bytes, timeZone: building.timeZone });
  if (inspection.outcome === "refuse") {
    const message = inspection.refusal?.sentence ?? "The file could not be read.";
    return {
      state: "refused",
      run: insertImportRun(ctx.db, { ...run, state: "refused", message, inspection, finishedAtMs: ctx.now }),
    };
  }
  ctx.uploads.save(sha256, file.bytes);
  return { state: "waiting", run: insertImportRun(ctx.db, { ...run, state: "waiting", inspection }) };
}
