import { inTransaction } from "@/db/client";
import { listOwnedRuns } from "@/db/queries/import-queue";
import { type NewImportRun, updateImportRun } from "@/db/queries/import-runs";
import type { ImportState } from "@/db/schema/trend-import";
import type { Context } from "../context";
import { isGone } from "./work";

/** Times that a file is begun before it is left alone: it may be what ends the program. */
const MOST_ATTEMPTS = 3;

/**
 * Puts imports back into the queue whose program ended in the middle of them: repeating is safe. Those that another
 * living process works on are left alone.
 */
export function takeBackLeftImports(ctx: Pick<Context, "db">, now: number): number {
  return takeBack(ctx, (run) => isGone(run.owner, run.heartbeatAtMs, now), cutOff, now);
}

/** The same for those of a worker that broke down; they are not repeated by themselves. */
export function interruptImportsOf(ctx: Pick<Context, "db">, owner: string, now: number): number {
  return takeBack(ctx, (run) => run.owner === owner, brokenDown, now);
}

type Owned = ReturnType<typeof listOwnedRuns>[number];

function takeBack(
  ctx: Pick<Context, "db">,
  which: (run: Owned) => boolean,
  stateAfter: (run: Owned) => Partial<NewImportRun>,
  now: number,
): number {
  if (listOwnedRuns(ctx.db).length === 0) return 0;
  return inTransaction(ctx.db, (tx) => {
    const left = listOwnedRuns(tx).filter(which);
    for (const run of left) {
      const after = stateAfter(run);
      const finishedAtMs = after.state === "failed" || after.state === "interrupted" ? now : undefined;
      updateImportRun(tx, run.id, { ...after, finishedAtMs, owner: null, heartbeatAtMs: null });
    }
    return left.length;
  });
}

const AT_WORK: readonly ImportState[] = ["inspecting", "running"];

function cutOff({ state, attempts }: Owned): Partial<NewImportRun> {
  if (!AT_WORK.includes(state)) return {};
  if (attempts >= MOST_ATTEMPTS)
    return {
      state: "failed",
      message: `The program ended ${attempts} times in the middle of this file. What was stored stays.`,
      attempts: 0,
    };
  return {
    state: state === "running" ? "queued" : "received",
    message: "It was cut off, and is begun again in its turn.",
  };
}

function brokenDown({ state }: Owned): Partial<NewImportRun> {
  if (!AT_WORK.includes(state)) return {};
  const stays = state === "running" ? " What was stored stays." : " Nothing of it is stored.";
  return { state: "interrupted", message: `The import broke down in the middle of this file.${stays}`, attempts: 0 };
}
