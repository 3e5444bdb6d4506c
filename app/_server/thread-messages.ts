import type { AnalysisJob } from "@/lib/services/kept/analyst";

/** What the server tells its background thread: there is something in the import queue, or a result is wanted. */
export type ToThread = { say: "look" } | { say: "work-out"; job: AnalysisJob };

/** What the thread tells of a result: how far it is, that it is kept, or that it could not be worked out. */
export type FromThread = { job: AnalysisJob } & (
  | { say: "begun" }
  | { say: "progress"; done: number; of: number }
  | { say: "done" }
  | { say: "failed" }
);
