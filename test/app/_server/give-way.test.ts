import { getPriority } from "node:os";
import path from "node:path";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";

const PROGRAM = path.join(import.meta.dirname, "../../../app/_server/give-way.ts");

/** What a thread that gives way says of its own priority and of the process's first thread. */
const THREAD = `
  const { readlinkSync } = require("node:fs");
  const { getPriority } = require("node:os");
  const { parentPort, workerData } = require("node:worker_threads");
  require("tsx/cjs/api").register();
  require(workerData).giveWay();
  const thread = Number(readlinkSync("/proc/thread-self").split("/").at(-1));
  parentPort.postMessage({ own: getPriority(thread), first: getPriority(process.pid) });
`;

test.runIf(process.platform === "linux")(
  "a thread gives way by itself; the one that answers people does not",
  async () => {
    const before = getPriority(process.pid);
    const worker = new Worker(THREAD, { eval: true, workerData: PROGRAM, execArgv: [] });
    const said = await new Promise((resolve, reject) => worker.once("message", resolve).once("error", reject));
    await worker.terminate();
    expect(said).toEqual({ own: 19, first: before });
  },
);
