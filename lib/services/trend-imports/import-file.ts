import { findRun } from "@/db/queries/import-queue";
import type { ImportRunRow } from "@/db/queries/import-runs";
import { listZones } from "@/db/queries/zones";
import type { RowAccounting, TrendAnswers, TrendAsk, TrendFinding } from "@/lib/importers/trend-csv/trend-file";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { markOf } from "./cautions";
import { type ChoiceRule, type Chosen, choosePoints, type Remark } from "./choose";
import { confirmTask, mappingCautions, presentIn } from "./confirm";
import { type MappingTask, readMappingTask } from "./mapping";
import { fileFaults } from "./mapping-faults";
import { inspectionOf } from "./mapping-lines";
import { queueTrendImports } from "./queue";
import type { FileAnswers, RunAnswers } from "./run-input";
import { settleRun } from "./settle-run";
import { type BroughtFile, type StagedFile, stageTrendFile } from "./stage";
import { workInline } from "./work";

export type FileImport = {
  file: string;
  outcome: "imported" | "unchanged" | "asked" | "refused";
  message: string;
  runId: number;
  rows: RowAccounting | null;
  samples: { added: number; changed: number; same: number } | null;
  mapped: { name: string; kind: string; zone: string | null }[];
  /** Points that are not stored, with the reason. */
  leftOut: Remark[];
  /** Points that nothing settles, and questions about the file. Nothing is stored while there are any. */
  open: Remark[];
  ask: TrendAsk[];
  /** Odd things about the mapping, let pass when proposals are accepted and left open otherwise. */
  cautions: Remark[];
  findings: TrendFinding[];
};

/**
 * Takes one trend file from staging to the store without a person: points are mapped by what is known of them and, when
 * asked for, by proposals. A file that a profile fits is imported as the profile says; one that a profile nearly fits
 * shows where they part. With a question left open the file waits for its mapping and no sample is stored.
 */
export async function importTrendFile(
  ctx: Context,
  buildingId: number,
  file: BroughtFile,
  rule: ChoiceRule,
): Promise<FileImport> {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const choose = (run: ImportRunRow): Chosen =>
    choosePoints(readMappingTask(ctx, buildingId, [run.id]).lines, rule, presentIn(ctx, buildingId));

  const work = workInline(ctx);
  let staged = await stageTrendFile(ctx, buildingId, file, { work });
  if (staged.state === "unchanged" && settlesMore(staged.run, choose(staged.run)))
    staged = await stageTrendFile(ctx, buildingId, file, { again: true, work });
  if (staged.state !== "waiting") return settledBefore(ctx, staged);

  const { run } = staged;
  const task = readMappingTask(ctx, buildingId, [run.id]);
  const { points, leftOut, ...chosen } = choosePoints(task.lines, rule, presentIn(ctx, buildingId));
  const cautions = mappingCautions(ctx.db, buildingId, task, points);
  const remarks = cautions.map(({ point: name, sentence: reason }) => ({ name, reason }));
  const open = rule.acceptProposals ? chosen.open : [...chosen.open, ...doubts(task, chosen.open), ...remarks];
  const answersByRun = { [String(run.id)]: fileAnswersOf(rule.answers) };
  const unanswered = fileFaults(task.fileAsks, answersByRun);
  const ask = inspectionOf(run).ask.filter((each) => unanswered.has(`answers.${run.id}.${each.what}`));
  const nothingMapped = Object.values(points).every((choice) => choice.skip);
  if (open.length + ask.length > 0 || nothingMapped)
    return { ...reportOf(run), outcome: "asked", message: askedSentence(open, ask), open, ask, leftOut };
  const input = { points, answersByRun, cautionsSeen: markOf(cautions) };
  try {
    queueTrendImports(ctx, buildingId, confirmTask(ctx, buildingId, task, input));
  } catch (error) {
    // Another process may have taken up the very same file in the meantime.
    const isTakenUp = error instanceof ServiceError && findRun(ctx.db, run.id)?.state !== "waiting";
    if (!isTakenUp) throw error;
  }
  return { ...importedReport(ctx, await settleRun(ctx, run.id, work), leftOut), cautions: remarks };
}

/** Where a profile that nearly fits parts from the file, but for points that are open anyway. */
function doubts({ profileNotes }: MappingTask, open: readonly Remark[]): Remark[] {
  const named = new Set(open.map((remark) => remark.name));
  return profileNotes.flatMap(({ fileName, differences }) =>
    differences
      .filter(({ point }) => point === undefined || !named.has(point))
      .map(({ point, sentence }) => ({ name: point ?? fileName, reason: sentence })),
  );
}

/** What an import did that got to its end; throws the reason when it did not. */
function importedReport(ctx: Context, run: ImportRunRow, leftOut: Remark[]): FileImport {
  if (run.state !== "done") throw new ServiceError("conflict", `${run.fileName}: ${run.message}`);
  const codes = new Map(listZones(ctx.db, run.buildingId).map((zone) => [zone.id, zone.code]));
  const mapped = Object.entries((run.answers as RunAnswers).points).flatMap(([name, choice]) =>
    choice.skip
      ? []
      : { name, kind: choice.kind, zone: choice.zoneId === null ? null : (codes.get(choice.zoneId) ?? null) },
  );
  return { ...reportOf(run), outcome: "imported", mapped, leftOut };
}

/** True when points of a file imported before would be stored now that were left out then for want of a place. */
function settlesMore(run: ImportRunRow, { points }: Chosen): boolean {
  const before = (run.answers as RunAnswers | null)?.points ?? {};
  return Object.entries(points).some(([name, choice]) => {
    const then = before[name];
    return !choice.skip && then?.skip === true && then.undecided === true;
  });
}

function settledBefore(ctx: Context, { state, run }: StagedFile): FileImport {
  if (state === "refused") return { ...reportOf(run), outcome: "refused" };
  if (state === "settled") return importedReport(ctx, run, []);
  const message = "This very file was imported before: nothing to do.";
  return { ...reportOf(run), outcome: "unchanged", message, samples: null };
}

function reportOf(run: ImportRunRow): Omit<FileImport, "outcome"> {
  const settled = run.state === "done";
  return {
    file: run.fileName,
    message: run.message,
    runId: run.id,
    rows: settled
      ? {
          rowsInFile: run.rowsInFile,
          accepted: run.rowsAccepted,
          repaired: run.rowsRepaired,
          heldBack: run.rowsHeldBack,
          rejected: run.rowsRejected,
          ignored: run.rowsIgnored,
        }
      : null,
    samples: settled ? { added: run.samplesAdded, changed: run.samplesChanged, same: run.samplesSame } : null,
    mapped: [],
    leftOut: [],
    open: [],
    ask: [],
    cautions: [],
    findings: inspectionOf(run).findings,
  };
}

function fileAnswersOf({ dateOrder, timeStart, clock, valueColumn, flagColumn }: TrendAnswers): FileAnswers {
  return {
    dateOrder,
    timeStart,
    clock,
    valueColumn,
    ...(flagColumn ? { flagColumn: { good: [...flagColumn.good] } } : {}),
  };
}

function askedSentence(open: readonly Remark[], ask: readonly TrendAsk[]): string {
  const parts = [
    ...ask.map((each) => each.question),
    ...(open.length > 0 ? [`${open.length} ${open.length === 1 ? "point has" : "points have"} no mapping yet.`] : []),
  ];
  const why = parts.length > 0 ? parts.join(" ") : "None of its points has a place in this building.";
  return `${why} Nothing was stored; the file waits for its mapping.`;
}
