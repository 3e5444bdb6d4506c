import path from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as wait } from "node:timers/promises";
import { startImportWorker } from "@/app/_server/import-worker";
import { openStores } from "@/app/_server/open-stores";
import { findRun } from "@/db/queries/import-queue";
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
import { readZonesOverview } from "@/lib/services/zones/overview";
import { quantile } from "../median";
import { contend } from "./contend";

export type LoadInput = { dataFolder: string; before: string; file: string; idleMs: number };
export type Watched = {
  reports: number;
  reportP99: number;
  reportMax: number;
  overviews: number;
  overviewP95: number;
  loopMax: number;
};
export type LoadOutcome = {
  ms: number;
  peakMb: number;
  cpuMs: number;
  idle: Watched;
  otherBuilding: Watched;
  sameBuilding: Watched;
  state: string;
};

const RULE = { acceptProposals: true, answers: {} };

/** A server's thread with its import worker: people read and report on building 1 while files come in. */
await contend<LoadInput>(async ({ dataFolder, before, file, idleMs }) => {
  const stores = openStores(dataFolder);
  const ctx: Context = { ...stores, actor: { kind: "command-line", name: "bench" }, now: Date.now() };
  await importTrendFile(ctx, 1, { name: path.basename(before), bytes: before }, RULE);
  const links = listZones(ctx.db, 1).map((zone) => issueComfortLink(ctx, 1, { zoneId: zone.id }).token);
  const worker = startImportWorker(dataFolder, stores.db);
  await readZonesOverview(ctx, 1);

  const idle = await watch(ctx, links, wait(idleMs));
  const begun = performance.now();
  const toOther = importThroughWorker(ctx, 2, file, worker.poke);
  const otherBuilding = await watch(ctx, links, toOther);
  const ms = performance.now() - begun;
  const toSame = importThroughWorker(ctx, 1, file, worker.poke);
  const sameBuilding = await watch(ctx, links, toSame);
  await worker.stop();
  return { ms, idle, otherBuilding, sameBuilding, state: `${await toOther}, ${await toSame}` };
});

/** As the pages do it: take the file in, wait until it is read, confirm the mapping, wait until it is stored. */
async function importThroughWorker(ctx: Context, building: number, file: string, poke: () => void): Promise<string> {
  const kept = await ctx.uploads.saveFrom(file);
  const { run } = receiveTrendFile(ctx, building, { fileName: path.basename(file), ...kept });
  const until = async (states: readonly string[]) => {
    poke();
    for (;;) {
      const state = findRun(ctx.db, run.id)?.state ?? "gone";
      if (states.includes(state)) return state;
      await wait(50);
    }
  };
  const read = await until(["waiting", "refused", "failed"]);
  if (read !== "waiting") return read;
  const task = readMappingTask(ctx, building, [run.id]);
  const { points } = choosePoints(task.lines, RULE, presentIn(ctx, building));
  const cautionsSeen = markOf(mappingCautions(ctx.db, building, task, points));
  queueTrendImports(ctx, building, confirmMapping(ctx, building, { points, answersByRun: {}, cautionsSeen }, [run.id]));
  return until(["done", "failed", "refused"]);
}

/** Files a report every 10 ms and reads the overview every 100 ms until `end`. */
async function watch(ctx: Context, links: string[], end: Promise<unknown>): Promise<Watched> {
  const [reports, overviews]: [number[], number[]] = [[], []];
  let over = false;
  const ended = end.finally(() => {
    over = true;
  });
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  const reporting = (async () => {
    for (let i = 0; !over; i++) {
      // A link takes few reports an hour: time goes faster for them.
      const moment = { ...ctx, now: ctx.now + i * 120_000 };
      const start = performance.now();
      fileComfortReport(moment, links[i % links.length] as string, { thermalSensation: -2, preference: "warmer" });
      reports.push(performance.now() - start);
      await wait(10);
    }
  })();
  while (!over) {
    const start = performance.now();
    await readZonesOverview(ctx, 1);
    overviews.push(performance.now() - start);
    await wait(100);
  }
  await Promise.all([reporting, ended]);
  delay.disable();
  return {
    reports: reports.length,
    reportP99: quantile(reports, 0.99),
    reportMax: Math.max(...reports),
    overviews: overviews.length,
    overviewP95: quantile(overviews, 0.95),
    loopMax: delay.max / 1e6,
  };
}
