import { z } from "zod";
import type { Queryable } from "@/db/client";
import { findMappingDraft, saveMappingDraft } from "@/db/queries/mapping-profiles";
import { actorName } from "../authorise";
import type { Context } from "../context";
import { mappingEntry } from "./mapping-entry";
import { fileAnswers } from "./run-input";

/** What was entered on a building's mapping page so far. Two people who map at once see each other's entries. */
export const mappingDraft = z.object({
  entries: z.record(z.string(), mappingEntry).default({}),
  answersByRun: z.record(z.string(), fileAnswers).default({}),
  /** Name of the profile to keep by source key; blank when none is to be kept. */
  profileNames: z.record(z.string(), z.string()).default({}),
  /** The last change of many rows, to be taken back: what stood in each before, null for what was not entered. */
  lastStep: z
    .object({ words: z.string(), before: z.record(z.string(), mappingEntry.nullable()) })
    .nullable()
    .default(null),
});
export type MappingDraft = z.output<typeof mappingDraft>;

/** The draft of a building, empty when nothing is entered. */
export const readMappingDraft = (db: Queryable, buildingId: number): MappingDraft =>
  mappingDraft.parse(findMappingDraft(db, buildingId) ?? {});

export function keepMappingDraft(
  ctx: Pick<Context, "actor" | "now">,
  db: Queryable,
  buildingId: number,
  draft: MappingDraft,
): void {
  saveMappingDraft(db, { buildingId, draft, updatedAtMs: ctx.now, updatedBy: actorName(ctx.actor) });
}
