import type { FileOutcome } from "../imports/take-file";
import type { CompletedUpload } from "./complete";

const SAID: Record<CompletedUpload["state"], string> = {
  received: "Here, all of it; it is read in its turn.",
  "at-work": "This very file was brought in already and is being worked on.",
  waiting: "This very file was brought in already; its points wait for their mapping.",
  unchanged: "This very file was imported before: nothing to do.",
};

/** What became of a file that came whole, in a sentence. */
export function outcomeOf({ state, run, fileName }: CompletedUpload): FileOutcome {
  return { fileName, state: state === "unchanged" ? "unchanged" : "waiting", message: SAID[state], runId: run.id };
}
