import { parentPort, workerData } from "node:worker_threads";
import { workOffQueue } from "@/lib/services/trend-imports/queue";
import { openStores } from "./open-stores";

/** What the server tells its worker: where the data lies and the name that its work goes by. */
export type ImportWorkerData = { folder: string; owner: string; program: string };

/** Looks at the queue without being told, for what another process put there [ms]. */
const LOOK_MS = 2_000;

/*
 * The thread that imports: one for a server process, with connections of its own, so that no page waits for a file.
 * A message of any sort wakes it.
 */
const { folder, owner } = workerData as ImportWorkerData;
const { db, trends, uploads } = openStores(folder);
const ctx = { db, trends, uploads, actor: { kind: "command-line" as const, name: "import worker" } };
const work = { owner, clock: Date.now };

let wake: () => void = () => {};
let isCalled = false;
parentPort?.on("message", () => {
  isCalled = true;
  wake();
});

for (;;) {
  isCalled = false;
  await workOffQueue(ctx, work, (error) => console.error(error));
  if (!isCalled) await called();
}

function called(): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, LOOK_MS);
    wake = () => {
      clearTimeout(timer);
      resolve();
    };
  });
}
