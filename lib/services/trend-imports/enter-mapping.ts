import { z } from "zod";
import { inTransaction } from "@/db/client";
import { deleteMappingDraft } from "@/db/queries/mapping-profiles";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { parseInput } from "../parse";
import { markOf } from "./cautions";
import { confirmMapping, mappingCautions } from "./confirm";
import { type MappingTask, readMappingTask } from "./mapping";
import { keepMappingDraft, readMappingDraft } from "./mapping-draft";
import { choiceOfEntry, isSettled, mappingEntry } from "./mapping-entry";
import { type FileAnswers, fileAnswers, type PointChoice } from "./run-input";

const enteredRows = z.object({
  entries: z.record(z.string(), mappingEntry),
  answersByRun: z.record(z.string(), fileAnswers).default({}),
  profileNames: z.record(z.string(), z.string()).default({}),
});
export type EnteredRows = z.input<typeof enteredRows>;

/** Keeps what is entered on the mapping page, whole or not; nothing is imported by it. */
export function keepEntered(ctx: Context, buildingId: number, input: EnteredRows): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { entries, answersByRun, profileNames } = parseInput(enteredRows, input);
  inTransaction(ctx.db, (tx) => {
    const draft = readMappingDraft(tx, buildingId);
    keepMappingDraft(ctx, tx, buildingId, {
      ...draft,
      entries: { ...draft.entries, ...entries },
      answersByRun: { ...draft.answersByRun, ...answersByRun },
      profileNames: { ...draft.profileNames, ...profileNames },
    });
  });
}

/**
 * Confirms the mapping of all waiting files as it is entered: rows entered by hand, those that a profile or an earlier
 * import settles, and no proposal that nobody has looked at. Keep what was on the page first (`keepEntered`).
 */
export function confirmEntered(ctx: Context, buildingId: number, { cautionsSeen }: { cautionsSeen: string }): number[] {
  requireFacilities(ctx);
  const task = readMappingTask(ctx, buildingId);
  const names = readMappingDraft(ctx.db, buildingId).profileNames;
  const runIds = confirmMapping(ctx, buildingId, {
    points: settledChoices(task),
    answersByRun: givenAnswers(task),
    cautionsSeen,
    profiles: task.sources.map(({ key, name }) => ({ key, name: names[key] ?? name })),
  });
  deleteMappingDraft(ctx.db, buildingId);
  return runIds;
}

/** Choices of the rows that are settled; the others are left to be asked about. */
export function settledChoices({ lines }: MappingTask): Record<string, PointChoice> {
  return Object.fromEntries(
    lines.flatMap(({ name, state }) => {
      const choice = isSettled(state) ? choiceOfEntry(state.entry) : null;
      return choice ? [[name, choice] as const] : [];
    }),
  );
}

export function givenAnswers({ fileAsks }: MappingTask): Record<string, FileAnswers> {
  const answers: Record<string, FileAnswers> = {};
  for (const { runId, given } of fileAsks) answers[String(runId)] = { ...answers[String(runId)], ...given };
  return answers;
}

/** What is odd about the rows that are settled so far, with the mark that lets it pass. */
export function readStandingCautions(
  ctx: Context,
  buildingId: number,
  task: MappingTask,
): { mark: string; sentences: string[] } {
  requireFacilities(ctx);
  const cautions = mappingCautions(ctx.db, buildingId, task, settledChoices(task));
  return { mark: markOf(cautions), sentences: cautions.map((each) => each.sentence) };
}
