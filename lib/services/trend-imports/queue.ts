import { inTransaction } from "@/db/client";
import { findRun, findRunLine, hasAnswers, nextInQueue } from "@/db/queries/import-queue";
import { findImportRun, type ImportRunRow, updateImportRun } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import { requireFacilities } from "../authorise";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { inspectRun } from "./inspect-run";
import { storeRun } from "./run";
import { takeBackLeftImports } from "./take-back-left";
import { withdrawRun } from "./withdraw-run";
import type { Work } from "./work";

const READY: readonly ImportState[] = ["waiting", "interrupted", "failed"];

/** Puts runs whose mapping is settled into the queue, in the order that they came in. */
export function queueTrendImports(ctx: Context, buildingId: number, runIds: readonly number[]): void {
  requireFacilities(ctx);
  inTransaction(ctx.db, (tx) => {
    for (const runId of runIds) {
      const run = findRunLine(tx, runId);
      if (run?.kind !== "trends" || run.buildingId !== buildingId)
        throw new ServiceError("not-found", "This import does not exist.");
      if (!READY.includes(run.state))
        throw new ServiceError("conflict", `${run.fileName} is ${run.state}: it does not wait for its mapping.`);
      if (!hasAnswers(tx, runId))
        throw new ServiceError("precondition", `${run.fileName}: say first what its points are.`);
      updateImportRun(tx, runId, { state: "queued", message: "", finishedAtMs: null });
    }
  });
}

/** Puts an import that was interrupted or failed into the queue again, from where it got to. */
export function repeatImport(ctx: Context, buildingId: number, runId: number): void {
  requireFacilities(ctx);
  inTransaction(ctx.db, (tx) => {
    const run = findImportRun(tx, buildingId, runId);
    if (run?.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
    if (run.state !== "interrupted" && run.state !== "failed")
      throw new ServiceError("conflict", `${run.fileName} is ${run.state}: there is nothing to repeat.`);
    updateImportRun(tx, runId, { state: run.answers ? "queued" : "received", message: "", finishedAtMs: null });
  });
}

/**
 * Works off the queue: withdrawals first, then the oldest file, one at a time, until there is none or another process
 * is at work. Faults of the program go to `onFault`; the run they befell is marked, and the next one goes on.
 */
export async function workOffQueue(
  ctx: Omit<Context, "now">,
  work: Work,
  onFault: (error: unknown) => void,
): Promise<void> {
  for (;;) {
    takeBackLeftImports(ctx, work.clock());
    const next = nextInQueue(ctx.db);
    if (!next) return;
    try {
      await workOn({ ...ctx, now: work.clock() }, next, work);
    } catch (error) {
      if (!(error instanceof ServiceError)) onFault(error);
      if (!hasMoved(ctx, next)) return;
    }
  }
}

type Next = NonNullable<ReturnType<typeof nextInQueue>>;

export function workOn(ctx: Context, { id, state, withdraw }: Next, work: Work): Promise<ImportRunRow> {
  if (withdraw) return withdrawRun(ctx, id, work);
  return state === "received" ? inspectRun(ctx, id, work) : storeRun(ctx, id, work);
}

const hasMoved = (ctx: Pick<Context, "db">, { id, state, withdraw }: Next): boolean => {
  const run = findRun(ctx.db, id);
  return run?.state !== state || (run.withdrawalAskedBy !== null) !== withdraw;
};
