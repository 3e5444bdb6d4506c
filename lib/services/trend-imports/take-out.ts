import { findRun } from "@/db/queries/import-queue";
import type { ImportRunRow } from "@/db/queries/import-runs";
import type { UndoState } from "@/lib/trends/trend-store";
import type { Context } from "../context";

/** Takes out what a run stored, if it still can be. `why` says in a sentence why not. */
export async function takeOut(
  ctx: Context,
  run: Pick<ImportRunRow, "id">,
): Promise<{ status: "taken-out" | "nothing" } | { status: "stays"; why: string }> {
  const state = await ctx.trends.undoState(run.id);
  const why = whyNot(ctx, state);
  if (why !== null) return { status: "stays", why };
  await ctx.trends.undo(run.id);
  return { status: state.status === "nothing" ? "nothing" : "taken-out" };
}

/** Why a run can no longer be undone, in a sentence; null when it can. */
export function whyNot(ctx: Pick<Context, "db">, state: UndoState): string | null {
  if (state.status === "given-up")
    return "What stood before is no longer kept: it is for the last five imports, and not once readings were removed.";
  if (state.status !== "blocked") return null;
  const later = findRun(ctx.db, state.by);
  return `Import ${state.by}${later ? ` (${later.fileName})` : ""} has written to the same trends since. Undo that one first.`;
}
