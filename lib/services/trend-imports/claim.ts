import { inTransaction } from "@/db/client";
import { findRun, findRunLine, otherRunningRun, updateOwnRun } from "@/db/queries/import-queue";
import { type ImportRunRow, type NewImportRun, updateImportRun } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { isGone, type Work } from "./work";

/** Nobody may go on with a run that was given to somebody else: what this one still writes would be a second hand at it. */
export class NoLongerOurs extends Error {}

/**
 * Takes a run to work on, so that it is worked on once. Refused when it is not in one of the states `from`, when
 * somebody has it, or, before samples are stored, while those of another file are.
 */
export function claimRun(
  ctx: Context,
  runId: number,
  { from, to, work }: { from: readonly ImportState[]; to: ImportState; work: Work },
): ImportRunRow {
  // Its long columns are read before: nobody else may write while the transaction goes on.
  const whole = findRun(ctx.db, runId);
  return inTransaction(ctx.db, (tx) => {
    const line = findRunLine(tx, runId);
    if (!whole || line?.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
    const run = { ...whole, ...line };
    if (!from.includes(run.state) || run.owner !== null)
      throw new ServiceError("conflict", `${run.fileName} ${refusalOf(run)}`);
    if (to === "running") {
      const other = otherRunningRun(tx, runId);
      if (other && !isGone(other.owner, other.heartbeatAtMs, work.clock()))
        throw new ServiceError("conflict", `${run.fileName} waits until the import at work is through.`);
    }
    const claimed = {
      state: to,
      message: "",
      owner: work.owner,
      heartbeatAtMs: work.clock(),
      attempts: run.attempts + 1,
      stageStartedAtMs: work.clock(),
      bytesToRead: run.byteCount,
      bytesRead: 0,
      rowsRead: 0,
      readingsRead: 0,
      findingsSoFar: {},
      finishedAtMs: null,
    };
    updateImportRun(tx, runId, claimed);
    return { ...run, ...claimed };
  });
}

const AT_WORK: readonly ImportState[] = ["inspecting", "running"];

function refusalOf(run: ImportRunRow): string {
  if (AT_WORK.includes(run.state) || run.owner !== null)
    return "is being worked on at this moment. Look again in a minute.";
  if (run.state === "done") return "was imported before.";
  return `is ${run.state}: this cannot be done with it now.`;
}

/** Ends the work on a run in a state, and lets it go. Throws `NoLongerOurs` when somebody else has it. */
export function releaseRun(ctx: Context, run: ImportRunRow, work: Work, result: Partial<NewImportRun>): ImportRunRow {
  const ended = { attempts: 0, ...result, owner: null, heartbeatAtMs: null };
  if (!updateOwnRun(ctx.db, run.id, work.owner, ended)) throw new NoLongerOurs();
  return { ...run, ...ended };
}
