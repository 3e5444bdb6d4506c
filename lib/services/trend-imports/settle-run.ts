import { setTimeout as wait } from "node:timers/promises";
import { findRun, findRunLine } from "@/db/queries/import-queue";
import type { ImportRunRow } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { workOn } from "./queue";
import { takeBackLeftImports } from "./take-back-left";
import type { Work } from "./work";

const UNSETTLED: readonly ImportState[] = ["received", "inspecting", "queued", "running"];

export const isUnsettled = (run: Pick<ImportRunRow, "state" | "withdrawalAskedBy">): boolean =>
  UNSETTLED.includes(run.state) || run.withdrawalAskedBy !== null;

/** Between two looks at what somebody else is doing [ms]. */
const LOOK_MS = 100;

/** Brings one run as far as it goes without a person: works on it here, or waits while another process does. */
export async function settleRun(ctx: Context, runId: number, work: Work): Promise<ImportRunRow> {
  for (;;) {
    takeBackLeftImports(ctx, work.clock());
    const run = findRunLine(ctx.db, runId);
    // Its long columns are read once it is through.
    const settled = run && !isUnsettled(run) ? findRun(ctx.db, runId) : undefined;
    if (settled) return settled;
    if (!run) throw new ServiceError("not-found", "This import does not exist.");
    const { id, state } = run;
    const isFree = run.owner === null && (state === "received" || state === "queued");
    if (isFree) {
      try {
        await workOn(ctx, { id, state, withdraw: run.withdrawalAskedBy !== null }, work);
        continue;
      } catch (error) {
        // Somebody else has taken it, or stores another file at this moment.
        if (!(error instanceof ServiceError && error.code === "conflict")) throw error;
      }
    }
    await wait(LOOK_MS);
  }
}
