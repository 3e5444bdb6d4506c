import { inTransaction } from "@/db/client";
import { findImportRun, type ImportRunRow, updateImportRun } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import { actorName, requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { whyNot } from "./take-out";

/** States in which an import can be cancelled, and those in which what it stored can be taken out again. */
export const CANCELLABLE: readonly ImportState[] = ["received", "inspecting", "waiting", "queued", "running"];
export const UNDOABLE: readonly ImportState[] = ["done", "interrupted", "failed"];

/**
 * Cancels an import that is not done. One that nobody works on is cancelled at once (`cancelled`); else whoever does
 * is asked to stop and to take out what was stored (`asked`).
 */
export function cancelImport(ctx: Context, buildingId: number, runId: number): "cancelled" | "asked" {
  const by = actorName(requireFacilities(ctx));
  return inTransaction(ctx.db, (tx) => {
    const run = trendRun(findImportRun(tx, buildingId, runId));
    if (!CANCELLABLE.includes(run.state))
      throw new ServiceError("conflict", `${run.fileName} is ${run.state}: there is nothing left to cancel.`);
    if (run.owner === null && run.attempts === 0) {
      const message = `Cancelled by ${by}. Nothing had been stored.`;
      updateImportRun(tx, runId, { state: "cancelled", message, finishedAtMs: ctx.now });
      return "cancelled";
    }
    updateImportRun(tx, runId, { withdrawalAskedBy: by });
    return "asked";
  });
}

/**
 * Asks for an import to be undone: what it added goes, what it changed is put back. Its points stay mapped. Refused
 * when the store no longer can.
 */
export async function undoImport(ctx: Context, buildingId: number, runId: number): Promise<void> {
  const by = actorName(requireFacilities(ctx));
  const why = await whyNotUndone(ctx, buildingId, runId);
  if (why !== null) throw new ServiceError("conflict", why);
  updateImportRun(ctx.db, runId, { withdrawalAskedBy: by });
}

/** Why an import cannot be undone, in a sentence; null when it can. */
export async function whyNotUndone(ctx: Context, buildingId: number, runId: number): Promise<string | null> {
  requireFacilities(ctx);
  const run = trendRun(findImportRun(ctx.db, buildingId, runId));
  if (run.withdrawalAskedBy !== null) return `${run.fileName} is being undone already.`;
  if (!UNDOABLE.includes(run.state)) return `${run.fileName} is ${run.state}: there is nothing to undo.`;
  return whyNot(ctx, await ctx.trends.undoState(runId));
}

function trendRun(run: ImportRunRow | undefined): ImportRunRow {
  if (run?.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
  return run;
}
