import { inTransaction } from "@/db/client";
import { findRun } from "@/db/queries/import-queue";
import { type ImportRunRow, updateImportRun } from "@/db/queries/import-runs";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { releaseRun } from "./claim";
import { storedSentence } from "./end-badly";
import { takeOut } from "./take-out";
import { watchWork } from "./watch-work";
import { UNDOABLE } from "./withdraw";
import type { Work } from "./work";

/** Does what was asked: undoes an import that is done, or cancels one that waits for its turn. */
export async function withdrawRun(ctx: Context, runId: number, work: Work): Promise<ImportRunRow> {
  const run = claimWithdrawal(ctx, runId, work);
  const watch = watchWork(ctx, run, work);
  try {
    const taken = await takeOut(ctx, run);
    const by = run.withdrawalAskedBy;
    if (!UNDOABLE.includes(run.state))
      return releaseRun(ctx, run, work, {
        state: "cancelled",
        message: `Cancelled by ${by}. ${storedSentence(taken)}`,
        finishedAtMs: work.clock(),
        withdrawalAskedBy: null,
      });
    if (taken.status === "stays")
      return releaseRun(ctx, run, work, { message: `Could not be undone. ${taken.why}`, withdrawalAskedBy: null });
    const result = taken.status === "nothing" ? "It had changed nothing." : "Trends are as they were before it.";
    return releaseRun(ctx, run, work, {
      state: "undone",
      message: `Undone by ${by}. ${result} Its points stay mapped.`,
      finishedAtMs: work.clock(),
      withdrawalAskedBy: null,
    });
  } finally {
    watch.stop();
  }
}

function claimWithdrawal(ctx: Context, runId: number, work: Work): ImportRunRow {
  return inTransaction(ctx.db, (tx) => {
    const run = findRun(tx, runId);
    if (!run?.withdrawalAskedBy || run.owner !== null)
      throw new ServiceError("conflict", "This import is being worked on at this moment. Look again in a minute.");
    const claimed = { owner: work.owner, heartbeatAtMs: work.clock() };
    updateImportRun(tx, runId, claimed);
    return { ...run, ...claimed };
  });
}
