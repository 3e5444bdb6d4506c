import { setTimeout as wait } from "node:timers/promises";
import { type RunResult, readRunResult } from "@/lib/services/collectors/run-result";
import type { Context } from "@/lib/services/context";

const LONGEST_WAIT_S = 60;
const LOOK_MS = 200;

/** The result of a run, waited for as long as `?wait=` says [s], at most a minute; as it stands then. */
export async function awaitRun(request: Request, ctx: Context, runId: number): Promise<RunResult> {
  const asked = Number(new URL(request.url).searchParams.get("wait") ?? 0);
  const seconds = Number.isFinite(asked) ? Math.min(Math.max(asked, 0), LONGEST_WAIT_S) : 0;
  const until = performance.now() + seconds * 1000;
  for (;;) {
    const result = readRunResult(ctx, runId);
    if (result.settled || request.signal.aborted || performance.now() + LOOK_MS > until) return result;
    await wait(LOOK_MS);
  }
}

/** Where a program reads the result of a run. */
export const runAddress = (runId: number): string => `/api/v1/import-runs/${runId}`;
