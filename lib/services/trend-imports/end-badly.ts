import { withdrawalAsked } from "@/db/queries/import-queue";
import type { ImportRunRow } from "@/db/queries/import-runs";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { NoLongerOurs, releaseRun } from "./claim";
import { takeOut } from "./take-out";
import { Withdrawn } from "./watch-work";
import type { Work } from "./work";

/** Cancels a run that was withdrawn in the middle of its work, with all that it stored; null for any other error. */
export async function endWithdrawn(
  ctx: Context,
  run: ImportRunRow,
  work: Work,
  error: unknown,
): Promise<ImportRunRow | null> {
  if (!(error instanceof Withdrawn)) return null;
  const by = withdrawalAsked(ctx.db, run.id) ?? run.startedBy;
  return releaseRun(ctx, run, work, {
    state: "cancelled",
    message: `Cancelled by ${by}. ${storedSentence(await takeOut(ctx, run))}`,
    finishedAtMs: work.clock(),
    withdrawalAskedBy: null,
  });
}

export function storedSentence(taken: Awaited<ReturnType<typeof takeOut>>): string {
  if (taken.status === "stays") return `What it had stored stays. ${taken.why}`;
  return taken.status === "nothing" ? "Nothing had been stored." : "What it had stored was taken out again.";
}

/** Marks a run failed: with the refusal's own words, or with `sentence` for a fault of the program. */
export function failRun(ctx: Context, run: ImportRunRow, work: Work, error: unknown, sentence: string): void {
  if (error instanceof NoLongerOurs) return;
  const message = error instanceof ServiceError ? error.message : sentence;
  releaseRun(ctx, run, work, { state: "failed", message, finishedAtMs: work.clock(), withdrawalAskedBy: null });
}
