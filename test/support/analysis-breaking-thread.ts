import { parentPort } from "node:worker_threads";
import type { FromThread, ToThread } from "@/app/_server/thread-messages";

/* A background thread for tests that breaks down in the middle of the first result it is asked for. */
parentPort?.on("message", (message: ToThread) => {
  if (message.say !== "work-out") return;
  const begun: FromThread = { say: "begun", job: message.job };
  parentPort?.postMessage(begun);
  setTimeout(() => {
    throw new Error("out of memory");
  }, 50);
});
