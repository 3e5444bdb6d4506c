import { setImmediate as nextTurn } from "node:timers/promises";
import { parentPort, workerData } from "node:worker_threads";
import { postNewReports } from "@/lib/services/comfort-reports/post-reports";
import { deleteOldReportDetails } from "@/lib/services/comfort-reports/retention";
import { AnalysisQueue } from "@/lib/services/kept/analysis-queue";
import type { AnalysisJob } from "@/lib/services/kept/analyst";
import { findKind } from "@/lib/services/kept/kinds";
import { workOutJob } from "@/lib/services/kept/work-out";
import { deleteOldRawReadings } from "@/lib/services/plug-logs/raw-readings";
import { mailAnswers } from "@/lib/services/report-mail/mail-answers";
import { mailNewReports } from "@/lib/services/report-mail/mail-new-reports";
import { workOffQueue } from "@/lib/services/trend-imports/queue";
import { giveWay } from "./give-way";
import { openStores } from "./open-stores";
import type { FromThread, ToThread } from "./thread-messages";

/** What the server tells its thread: where the data lies and the name that its work goes by. */
export type BackgroundThreadData = { folder: string; owner: string; program: string };

/** Looks at the queues without being told, for what another process put there or has ended [ms]. */
const LOOK_MS = 2_000;
/** Between two times that what was written is moved from the log into `app.db` [ms]. */
const CHECKPOINT_MS = 1_000;
/** Between two looks for plug loggers' readings, and reports' notes and addresses, kept for long enough [ms]. */
const DELETE_MS = 3_600_000;
/** Between two words on how far a result is [ms]. */
const PROGRESS_MS = 250;

/*
 * The thread that does what takes long: one for a server process, with connections of its own, so that no page waits. It
 * imports files and works results out by turns: both give way after some ten milliseconds, so that neither stops the other
 * and together they take one core, never two.
 */
giveWay();
const { folder, owner } = workerData as BackgroundThreadData;
const stores = openStores(folder);
const ctx = { ...stores, actor: { kind: "command-line" as const, name: "background thread" } };
const work = { owner, clock: Date.now };
const queue = new AnalysisQueue(Date.now());
const tell = (message: FromThread): void => parentPort?.postMessage(message);

const sleepers = new Set<() => void>();
parentPort?.on("message", (message: ToThread) => {
  if (message.say === "work-out") queue.ask(message.job);
  wakeAll();
});

// The thread that answers people leaves this to us: it takes two waits for the disk.
setInterval(() => stores.db.$client.pragma("wal_checkpoint(passive)"), CHECKPOINT_MS);

deleteOld();
setInterval(deleteOld, DELETE_MS);

await Promise.all([importFiles(), workOutResults(), postReports(), sendMail()]);

function deleteOld(): void {
  try {
    deleteOldRawReadings({ ...stores, now: Date.now() });
    deleteOldReportDetails({ ...stores, now: Date.now() });
  } catch (error) {
    console.error(error);
  }
}

async function postReports(): Promise<never> {
  for (;;) {
    await postNewReports(ctx, Date.now).catch((error) => console.error(error));
    await called();
  }
}

async function sendMail(): Promise<never> {
  for (;;) {
    await mailAnswers(ctx, Date.now).catch((error) => console.error(error));
    await mailNewReports(ctx, Date.now).catch((error) => console.error(error));
    await called();
  }
}

async function importFiles(): Promise<never> {
  for (;;) {
    await workOffQueue(ctx, work, (error) => console.error(error));
    wakeAll();
    await called();
  }
}

async function workOutResults(): Promise<never> {
  for (;;) {
    queue.askForImported(ctx);
    const job = queue.take(ctx);
    if (!job) await called();
    else await workOutOne(job);
  }
}

async function workOutOne(job: AnalysisJob): Promise<void> {
  let toldMs = 0;
  tell({ say: "begun", job });
  try {
    const kind = findKind(job.kind);
    if (!kind) throw new Error(`there is no kind of result named ${job.kind}`);
    const onProgress = (progress: { done: number; of: number }): void => {
      if (performance.now() - toldMs < PROGRESS_MS) return;
      toldMs = performance.now();
      tell({ say: "progress", job, ...progress });
    };
    await workOutJob({ ...ctx, now: Date.now(), onProgress }, job, kind);
    tell({ say: "done", job });
  } catch (error) {
    console.error(error);
    tell({ say: "failed", job });
  }
  await nextTurn();
}

function called(): Promise<void> {
  return new Promise((resolve) => {
    const wake = (): void => {
      clearTimeout(timer);
      sleepers.delete(wake);
      resolve();
    };
    const timer = setTimeout(wake, LOOK_MS);
    sleepers.add(wake);
  });
}

function wakeAll(): void {
  for (const wake of [...sleepers]) wake();
}
