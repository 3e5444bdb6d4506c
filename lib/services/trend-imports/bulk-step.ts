import { inTransaction, type Queryable } from "@/db/client";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { type MappingTask, mappingTaskOf, type StatedLine } from "./mapping";
import { keepMappingDraft, type MappingDraft, readMappingDraft } from "./mapping-draft";
import { isSettled, type MappingEntry } from "./mapping-entry";

/** What a change of many rows sets; what is left out stays as it is. */
export type BulkChange = Partial<Pick<MappingEntry, "what" | "zoneId" | "unit">>;

/** Sets the same for many rows at once. It can be taken back until the next such step. Returns how many were set. */
export function setEntries(
  ctx: Context,
  buildingId: number,
  names: readonly string[],
  change: BulkChange,
  words: string,
): number {
  if (names.length === 0) throw new ServiceError("invalid", "No row is selected: select rows first.");
  if (Object.keys(change).length === 0)
    throw new ServiceError("invalid", "Say what to set for the selected rows: what they are, a zone or a unit.");
  const chosen = new Set(names);
  return step(ctx, buildingId, words, ({ lines }) =>
    lines
      .filter((line) => chosen.has(line.name))
      .map((line): [string, MappingEntry] => [line.name, changed(line, change)]),
  );
}

function changed({ state: { entry }, unitAsk }: StatedLine, change: BulkChange): MappingEntry {
  const unit = change.unit !== undefined && unitAsk?.choices.includes(change.unit ?? "") ? change.unit : entry.unit;
  return { ...entry, ...change, unit };
}

/** Takes every proposal of high confidence that is whole: its kind, its zone, and its unit where the file says none. */
export function acceptProposals(ctx: Context, buildingId: number): number {
  return step(ctx, buildingId, "proposals of high confidence accepted", ({ lines }) =>
    lines.filter(isSureProposal).map((line): [string, MappingEntry] => [line.name, line.state.entry]),
  );
}

/** A proposal that `acceptProposals` takes. */
export function isSureProposal({ state, proposal, unitAsk }: StatedLine): boolean {
  if (isSettled(state) || state.origin !== "proposal" || proposal.confidence !== "high") return false;
  const { what, zoneId, unit } = state.entry;
  const placed = zoneId !== null || what === "outdoor-air-temp" || what === "supply-air-temp";
  return what !== "" && placed && (unitAsk === null || unit !== null);
}

/** Takes the last change of many rows back. Returns how many rows are as they were before it. */
export function undoStep(ctx: Context, buildingId: number): number {
  requireFacilities(ctx);
  return inTransaction(ctx.db, (tx) => {
    const draft = readMappingDraft(tx, buildingId);
    if (!draft.lastStep) throw new ServiceError("precondition", "There is no step to take back.");
    const before = Object.entries(draft.lastStep.before);
    const entries = { ...draft.entries };
    for (const [name, entry] of before) {
      if (entry) entries[name] = entry;
      else delete entries[name];
    }
    keepMappingDraft(ctx, tx, buildingId, { ...draft, entries, lastStep: null });
    return before.length;
  });
}

function step(
  ctx: Context,
  buildingId: number,
  words: string,
  entriesOf: (task: MappingTask) => [string, MappingEntry][],
): number {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return inTransaction(ctx.db, (tx: Queryable) => {
    const draft = readMappingDraft(tx, buildingId);
    const entries = entriesOf(mappingTaskOf(tx, buildingId, draft));
    if (entries.length === 0) throw new ServiceError("precondition", `No row is left for that: ${words}.`);
    const before = Object.fromEntries(entries.map(([name]) => [name, draft.entries[name] ?? null]));
    const next: MappingDraft = {
      ...draft,
      entries: { ...draft.entries, ...Object.fromEntries(entries) },
      lastStep: { words: `${entries.length} ${entries.length === 1 ? "row" : "rows"}: ${words}`, before },
    };
    keepMappingDraft(ctx, tx, buildingId, next);
    return entries.length;
  });
}
