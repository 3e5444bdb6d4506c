import { workerData } from "node:worker_threads";
import { openStores } from "@/app/_server/open-stores";
import { nextInQueue } from "@/db/queries/import-queue";
import { claimRun } from "@/lib/services/trend-imports/claim";

/* An import worker for tests: it takes the next file to read and breaks down in the middle of it. */
const { folder, owner } = workerData as { folder: string; owner: string };
const stores = openStores(folder);
const { db } = stores;
const next = nextInQueue(db);
if (next) {
  const ctx = { ...stores, actor: { kind: "command-line" as const, name: "worker" }, now: Date.now() };
  claimRun(ctx, next.id, { from: ["received"], to: "inspecting", work: { owner, clock: Date.now } });
  throw new Error("out of memory");
}
setInterval(() => {}, 1_000);
