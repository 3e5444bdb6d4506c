import { readFileSync } from "node:fs";
import path from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as wait } from "node:timers/promises";
import { startBackgroundWorker } from "@/app/_server/background-worker";
import { openStores } from "@/app/_server/open-stores";
import { findRunLine } from "@/db/queries/import-queue";
import { listZones } from "@/db/queries/zones";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import type { Context } from "@/lib/services/context";
import { markOf } from "@/lib/services/trend-imports/cautions";
import { choosePoints } from "@/lib/services/trend-imports/choose";
import { confirmMapping, mappingCautions, presentIn } from "@/lib/services/trend-imports/confirm";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { readMappingTask } from "@/lib/services/trend-imports/mapping";
import { queueTrendImports } from "@/lib/services/trend-imports/queue";
import { receiveTrendFile } from "@/lib/services/trend-imports/receive";
import { quantile } from "../median";
import { startBareLoop } from "./bare-loop";
import { contend } from "./contend";
import { drawOverview } from "./overview-page";

export type LoadInput = { dataFolder: string; before: string; files: string[]; idleMs: number };
export type Watched = {
  reports: number;
  reportP99: number;
  reportMax: number;
  /** The same without the time that the thread was ready and had no core; null where the system does not tell. */
  reportOwnP99: number | null;
  overviews: number;
  overviewP95: number;
  overviewMax: number;
  /** Overviews that were of a moment before the last change, and how often one was worked out meanwhile. */
  behind: number;
  workedOut: number;
  loopMax: number;
  loopP99: number;
  /** Longest time that the event loop was late by its own work: waits for a core taken off. NaN where not known. */
  loopOwnMax: number;
  /** Of a process beside it that does nothing at all: what the machine does to anyone. */
  bareLoopMax: number;
};
export type LoadOutcome = {
  ms: number;
  peakMb: number;
  cpuMs: number;
  idle: Watched;
  otherBuilding: Watched;
  sameBuilding: Watched;
  /** How the imports ended. */
  states: string[];
};

const RULE = { acceptProposals: true, answers: {} };

/** A server's thread with its background thread: people read and report on building 1 while files come in. */
await contend<LoadInput>(async ({ dataFolder, before, files, idleMs }) => {
  const stores = openStores(dataFolder, { answersPeople: true });
  const alone: Context = { ...stores, actor: { kind: "command-line", name: "bench" }, now: Date.now() };
  await importTrendFile(alone, 1, { name: path.basename(before), bytes: before }, RULE);
  const links = listZones(alone.db, 1).map((zone) => issueComfortLink(alone, 1, { zoneId: zone.id }).token);
  const worker = startBackgroundWorker(dataFolder, stores.db);
  const ctx: Context = { ...alone, analyst: worker.analyst };
  while ((await drawOverview(ctx, 1)).isBehind) await wait(100);

  const idle = await watch(ctx, links, wait(idleMs));
  const begun = performance.now();
  const toOther = importInTurn(ctx, 2, files, worker.poke);
  const otherBuilding = await watch(ctx, links, toOther);
  const ms = performance.now() - begun;
  const toSame = importInTurn(ctx, 1, files, worker.poke);
  const isFollowed = async () => {
    while ((await drawOverview(ctx, 1)).changed.some((name) => name !== "reports")) await wait(100);
  };
  // Until the overview says what the new trends say.
  const sameBuilding = await watch(ctx, links, toSame.then(isFollowed));
  await worker.stop();
  return { ms, idle, otherBuilding, sameBuilding, states: [...(await toOther), ...(await toSame)] };
});

async function importInTurn(ctx: Context, building: number, files: string[], poke: () => void): Promise<string[]> {
  const states: string[] = [];
  for (const file of files) states.push(await importThroughWorker(ctx, building, file, poke));
  return states;
}

/** As the pages do it: take the file in, wait until it is read, confirm the mapping, wait until it is stored. */
async function importThroughWorker(ctx: Context, building: number, file: string, poke: () => void): Promise<string> {
  const kept = await ctx.uploads.saveFrom(file);
  const { run } = receiveTrendFile(ctx, building, { fileName: path.basename(file), ...kept });
  const until = async (states: readonly string[]) => {
    poke();
    for (;;) {
      const state = findRunLine(ctx.db, run.id)?.state ?? "gone";
      if (states.includes(state)) return state;
      await wait(50);
    }
  };
  const read = await until(["waiting", "refused", "failed"]);
  if (read !== "waiting") return read;
  const task = readMappingTask(ctx, building, [run.id]);
  const { points } = choosePoints(task.lines, RULE, presentIn(ctx, building));
  const cautionsSeen = markOf(mappingCautions(ctx.db, building, task, points));
  // The page was drawn in one request; somebody looks at it and posts it in another.
  await wait(20);
  queueTrendImports(ctx, building, confirmMapping(ctx, building, { points, answersByRun: {}, cautionsSeen }, [run.id]));
  return until(["done", "failed", "refused"]);
}

/** Files a report every 10 ms and reads the overview every 100 ms until `end`. */
async function watch(ctx: Context, links: string[], end: Promise<unknown>): Promise<Watched> {
  const [reports, reportsOwn, overviews]: [number[], number[], number[]] = [[], [], []];
  const times = new Set<number | null>();
  let [over, behind] = [false, 0];
  const ended = end.finally(() => {
    over = true;
  });
  const bare = await startBareLoop();
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  let loopOwnMax = 0;
  const ticking = (async () => {
    while (!over) {
      const [readyBefore, start] = [readyWithoutCoreMs(), performance.now()];
      await wait(2);
      const lateMs = performance.now() - start - 2;
      loopOwnMax = Math.max(loopOwnMax, lateMs - (readyWithoutCoreMs() - readyBefore));
    }
  })();
  const reporting = (async () => {
    for (let i = 0; !over; i++) {
      // A link takes few reports an hour: time goes faster for them.
      const moment = { ...ctx, now: ctx.now + i * 120_000 };
      const readyBefore = readyWithoutCoreMs();
      const start = performance.now();
      fileComfortReport(moment, links[i % links.length] as string, { thermalSensation: -2, preference: "warmer" });
      const ms = performance.now() - start;
      reports.push(ms);
      reportsOwn.push(ms - (readyWithoutCoreMs() - readyBefore));
      await wait(10);
    }
  })();
  while (!over) {
    const start = performance.now();
    const { isBehind, workedOutAtMs } = await drawOverview(ctx, 1);
    overviews.push(performance.now() - start);
    times.add(workedOutAtMs);
    if (isBehind) behind++;
    await wait(100);
  }
  await Promise.all([ticking, reporting, ended]);
  delay.disable();
  return {
    reports: reports.length,
    reportP99: quantile(reports, 0.99),
    reportMax: Math.max(...reports),
    reportOwnP99: Number.isNaN(reportsOwn[0]) ? null : quantile(reportsOwn, 0.99),
    overviews: overviews.length,
    overviewP95: quantile(overviews, 0.95),
    overviewMax: Math.max(...overviews),
    behind,
    workedOut: times.size - 1,
    loopMax: delay.max / 1e6,
    loopP99: delay.percentile(99) / 1e6,
    loopOwnMax,
    bareLoopMax: await bare.stop(),
  };
}

/** How long this thread has been ready to run without getting a core [ms]; NaN where the system does not tell. */
function readyWithoutCoreMs(): number {
  try {
    return Number(readFileSync("/proc/thread-self/schedstat", "utf8").split(" ")[1]) / 1e6;
  } catch {
    return Number.NaN;
  }
}
