import path from "node:path";
import { Worker } from "node:worker_threads";
import type { Analyst } from "@/lib/services/kept/analyst";
import { interruptImportsOf } from "@/lib/services/trend-imports/take-back-left";
import { newOwner } from "@/lib/services/trend-imports/work";
import { makeBackgroundAnalyst } from "./background-analyst";
import type { BackgroundThreadData } from "./background-thread";
import type { Stores } from "./open-stores";
import type { FromThread, ToThread } from "./thread-messages";

/** A thread that works off the import queue and works results out. */
export type BackgroundWorker = {
  /** Says that there is something in the import queue. */
  poke(): void;
  /** Asks it for results. */
  analyst: Analyst;
  stop(): Promise<void>;
};

/** What the thread begins with, and the program that it goes on with, from the project's folder. */
const START = "app/_server/start-thread.mjs";
const PROGRAM = "app/_server/background-thread.ts";

const inProject = (file: string): string => path.join(/* turbopackIgnore: true */ process.cwd(), file);

/** How long after a breakdown a new thread is started [ms]: one that breaks down at once must not fill the machine. */
const REST_MS = 1_000;

/**
 * Starts the thread that imports into a data folder and works its results out, and a new one whenever it breaks down: a
 * file that it was working on is marked interrupted, a result has failed. It runs from its source, outside the bundle of
 * the pages.
 */
export function startBackgroundWorker(folder: string, db: Stores["db"], program = PROGRAM): BackgroundWorker {
  let isStopped = false;
  let thread: Worker | null = null;
  const send = (message: ToThread): void => thread?.postMessage(message);
  const analyst = makeBackgroundAnalyst(send, Date.now);
  startThread();

  function startThread(): void {
    const data: BackgroundThreadData = { folder, owner: newOwner(), program: inProject(program) };
    const started = new Worker(/* turbopackIgnore: true */ inProject(START), { workerData: data, execArgv: [] });
    thread = started;
    started.unref();
    started.on("message", (message: FromThread) => analyst.received(message));
    started.on("error", (error) => console.error("The background thread broke down:", error));
    started.on("exit", () => {
      thread = null;
      analyst.threadEnded();
      if (isStopped) return;
      interruptImportsOf({ db }, data.owner, Date.now());
      setTimeout(() => {
        if (!isStopped) startThread();
      }, REST_MS).unref();
    });
  }

  return {
    poke: () => send({ say: "look" }),
    analyst,
    async stop() {
      isStopped = true;
      await thread?.terminate();
    },
  };
}
