import { createHash } from "node:crypto";
import { findRunsOfFile, type ImportRunRow, insertImportRun } from "@/db/queries/import-runs";
import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import { actorName, requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { isRunOfFile } from "./same-file";

/** Largest file taken in one go [bytes]. */
export const LARGEST_FILE_BYTES = 200_000_000;

export type StagedFile =
  | { state: "unchanged"; run: ImportRunRow }
  | { state: "waiting"; run: ImportRunRow }
  | { state: "refused"; run: ImportRunRow };

/**
 * Takes a trend file in: keeps it as it came, reads what it holds and what has to be asked, and stores no sample yet.
 * A file whose bytes were imported before changes nothing, unless it is to be taken `again` (for points left out then).
 */
export async function stageTrendFile(
  ctx: Context,
  buildingId: number,
  file: { name: string; bytes: Uint8Array },
  { again = false }: { again?: boolean } = {},
): Promise<StagedFile> {
  const actor = requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const sha256 = createHash("sha256").update(file.bytes).digest("hex");
  const known = earlierRun(ctx, buildingId, { sha256, fileName: file.name, again });
  if (known) return known;
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
  await ctx.uploads.saveFrom([file.bytes]);
  // Reading gives other requests a turn: the same file may have been taken in twice.
  return (
    earlierRun(ctx, buildingId, { sha256, fileName: file.name, again }) ?? {
      state: "waiting",
      run: insertImportRun(ctx.db, { ...run, state: "waiting", inspection }),
    }
  );
}

/** The run that settled the same bytes before, or that waits for its mapping. */
function earlierRun(
  ctx: Context,
  buildingId: number,
  { sha256, fileName, again }: { sha256: string; fileName: string; again: boolean },
): StagedFile | null {
  const newestOf = (state: "waiting" | "done") =>
    findRunsOfFile(ctx.db, buildingId, sha256, [state]).find((run) => isRunOfFile(run, fileName));
  const waiting = newestOf("waiting");
  const done = again ? undefined : newestOf("done");
  if (done && !(waiting && waiting.id > done.id)) return { state: "unchanged", run: done };
  return waiting ? { state: "waiting", run: waiting } : null;
}
