import { setTimeout as wait } from "node:timers/promises";
import type { Context } from "@/lib/services/context";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { pokeImportWorker } from "./stores";

/** Longest that an answer waits for the import worker: a person looks at a page that loads [ms]. */
const MOST_MS = 20_000;
const LOOK_MS = 60;

/**
 * Wakes the import worker and waits until it is through with the runs, or for 20 s: small files are answered for at
 * once, and the others go on.
 */
export async function awaitImports(ctx: Context, buildingId: number, runIds: readonly number[]): Promise<void> {
  if (runIds.length === 0) return;
  pokeImportWorker();
  const until = performance.now() + MOST_MS;
  while (performance.now() < until) {
    const atWork = readImportsAtWork(ctx, buildingId);
    if (!atWork.some((run) => runIds.includes(run.id))) return;
    await wait(LOOK_MS);
  }
}
