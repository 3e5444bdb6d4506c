import type { Building } from "@/lib/services/buildings/find";
import type { Context } from "@/lib/services/context";
import type { Kept } from "@/lib/services/kept/read-kept";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { type StandingLine, standingLine } from "./standing-words";

/** What a page draws above results that are behind, and where it follows them. */
export type StandingNoteData = {
  line: StandingLine;
  /** Address that tells how they stand now. */
  address: string;
  /** Changes with every new result. */
  mark: string;
};

/** Null when all results are of now. They go by the name of their kind, with their part: `zone-days/12`. */
export function standingNote(
  ctx: Context,
  building: Pick<Building, "id" | "timeZone">,
  shown: Readonly<Record<string, Kept<unknown>>>,
): StandingNoteData | null {
  const kept = Object.values(shown);
  if (kept.every(({ behind }) => behind === null)) return null;
  const line = standingLine(kept, building, readImportsAtWork(ctx, building.id));
  const of = encodeURIComponent(Object.keys(shown).join(","));
  return line && { line, address: `/buildings/${building.id}/standing?of=${of}`, mark: markOf(kept) };
}

export const markOf = (kept: readonly Kept<unknown>[]): string => kept.map(({ workedOutAtMs }) => workedOutAtMs).join();
