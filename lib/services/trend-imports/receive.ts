import { inTransaction, type Queryable } from "@/db/client";
import { findRunsOfFile, type ImportRunRow, insertImportRun } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import { actorName, requireSender } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { isRunOfFile } from "./same-file";

/** A file whose bytes lie in the upload folder. */
export type KeptFile = { fileName: string; sha256: string; byteCount: number };

/**
 * `received`: taken in now, not read yet. `at-work`: taken in before, and its turn comes or is on. `waiting`: read
 * before, its points have no mapping yet. `unchanged`: imported before.
 */
export type ReceivedFile = { state: "received" | "at-work" | "waiting" | "unchanged"; run: ImportRunRow };

/**
 * Takes in a trend file whose bytes are kept: whoever works off the queue reads it in its turn. The same file again
 * leads to its earlier import, unless that is done and the file is to be taken `again` (for points left out then).
 */
export function receiveTrendFile(
  ctx: Context,
  buildingId: number,
  { fileName, sha256, byteCount }: KeptFile,
  { again = false }: { again?: boolean } = {},
): ReceivedFile {
  const actor = requireSender(ctx, buildingId);
  findBuildingOrRefuse(ctx, buildingId);
  if (fileName.trim() === "") throw new ServiceError("invalid", "The file has no name: give it one and send it again.");
  if (byteCount === 0) throw new ServiceError("invalid", "The file is empty: export it again.");
  refuseMissingBytes(ctx, { fileName, sha256, byteCount });
  return inTransaction(ctx.db, (tx): ReceivedFile => {
    const earlier = earlierRun(tx, buildingId, { sha256, fileName, again });
    if (earlier) return earlier;
    const run = insertImportRun(tx, {
      buildingId,
      kind: "trends",
      fileName,
      sha256,
      byteCount,
      again,
      state: "received",
      startedAtMs: ctx.now,
      startedBy: actorName(actor),
    });
    return { state: "received", run };
  });
}

function refuseMissingBytes(ctx: Context, { fileName, sha256, byteCount }: KeptFile): void {
  const kept = ctx.uploads.open(sha256);
  kept?.close();
  if (kept?.size !== byteCount)
    throw new ServiceError("precondition", `${fileName} did not arrive whole: send it again.`);
}

const AT_WORK: readonly ImportState[] = ["received", "inspecting", "queued", "running"];

/** The run that settled the same file before, waits for its mapping, or has its turn to come. Leaves `except` out. */
export function earlierRun(
  db: Queryable,
  buildingId: number,
  file: { sha256: string; fileName: string; again: boolean },
  except?: number,
): ReceivedFile | null {
  const newestOf = (states: readonly ImportState[]) =>
    findRunsOfFile(db, buildingId, file.sha256, states).find(
      (run) => run.id !== except && run.kind === "trends" && isRunOfFile(run, file.fileName),
    );
  const waiting = newestOf(["waiting"]);
  const atWork = newestOf(AT_WORK);
  const done = file.again ? undefined : newestOf(["done"]);
  if (done && done.id > Math.max(waiting?.id ?? 0, atWork?.id ?? 0)) return { state: "unchanged", run: done };
  if (atWork) return { state: "at-work", run: atWork };
  return waiting ? { state: "waiting", run: waiting } : null;
}
