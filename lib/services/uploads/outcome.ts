import { type FileOutcome, outcomeOf } from "../imports/take-file";
import type { CompletedUpload } from "./complete";

/** What became so far of a file that came whole. */
export function uploadOutcome({ state, run, fileName }: CompletedUpload): FileOutcome {
  const unchanged = state === "unchanged" ? "This very file was imported before: nothing to do." : undefined;
  return { fileName, ...outcomeOf(run, unchanged) };
}
