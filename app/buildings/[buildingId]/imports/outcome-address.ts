import type { FileOutcome } from "@/lib/services/imports/take-file";

/**
 * Outcomes travel in the address: few, short, and the page can be loaded again. Refusals come first, then one file for
 * each thing that was said of the others; the history has all of it.
 */
export function outcomeAddress(buildingId: number, outcomes: readonly FileOutcome[]): string {
  const isBad = ({ state }: FileOutcome) => state === "refused" || state === "failed";
  const refused = outcomes.filter(isBad);
  const taken = new Map(outcomes.flatMap((each) => (isBad(each) ? [] : [[each.message, each] as const])));
  const shown = [...refused.slice(0, 12), ...[...taken.values()].slice(0, 12)].map(({ fileName, state, message }) => [
    state,
    fileName,
    message.slice(0, 300),
  ]);
  const counts = { all: outcomes.length, refused: refused.length };
  const query = new URLSearchParams({ outcome: JSON.stringify({ shown, counts }) });
  return `/buildings/${buildingId}/imports?${query}`;
}
