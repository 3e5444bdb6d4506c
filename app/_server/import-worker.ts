import path from "node:path";
import { Worker } from "node:worker_threads";
import { interruptImportsOf } from "@/lib/services/trend-imports/take-back-left";
import { newOwner } from "@/lib/services/trend-imports/work";
import type { ImportWorkerData } from "./import-worker-thread";
import type { Stores } from "./open-stores";

/** A thread that works off the import queue. */
export type ImportWorker = {
  /** Says that there is something in the queue. */
  poke(): void;
  stop(): Promise<void>;
};

/** What the thread begins with, and the program that it goes on with, from the project's folder. */
const START = "app/_server/start-thread.mjs";
const PROGRAM = "app/_server/import-worker-thread.ts";

const inProject = (file: string): string => path.join(/* turbopackIgnore: true */ process.cwd(), file);

/** How long after a breakdown a new thread is started [ms]: one that breaks down at once must not fill the machine. */
const REST_MS = 1_000;

/**
 * Starts the thread that imports into a data folder, and a new one whenever it breaks down; what it was working on is
 * marked interrupted. It runs from its source, outside the bundle of the pages.
 */
export function startImportWorker(folder: string, db: Stores["db"], program = PROGRAM): ImportWorker {
  let isStopped = false;
  let thread = startThread();

  function startThread(): Worker {
    const data: ImportWorkerData = { folder, owner: newOwner(), program: inProject(program) };
    const started = new Worker(/* turbopackIgnore: true */ inProject(START), { workerData: data, execArgv: [] });
    started.unref();
    started.on("error", (error) => console.error("The import worker broke down:", error));
    started.on("exit", () => {
      if (isStopped) return;
      interruptImportsOf({ db }, data.owner, Date.now());
      setTimeout(() => {
        if (!isStopped) thread = startThread();
      }, REST_MS).unref();
    });
    return started;
  }

  return {
    poke: () => thread.postMessage("look"),
    async stop() {
      isStopped = true;
      await thread.terminate();
    },
  };
}
