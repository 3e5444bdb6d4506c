import { findImportRun, type ImportRunRow } from "@/db/queries/import-runs";
import { readTrendParts } from "@/lib/importers/trend-csv/read-trend-parts";
import type { TrendAnswers, TrendFileResult, TrendInspection, TrendPart } from "@/lib/importers/trend-csv/trend-file";
import type { WriteStats } from "@/lib/trends/trend-store";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { claimRun } from "./claim";
import { CollectedFindings } from "./collect-findings";
import { endWithdrawn, failRun } from "./end-badly";
import { finishRun } from "./finish-run";
import { inspectKeptFile, openKeptFile } from "./inspect-run";
import { makePoints } from "./make-points";
import { type MappedPoint, mappedPoints, slicesOf } from "./mapped-points";
import type { RunAnswers } from "./run-input";
import { takeOut } from "./take-out";
import { type WorkWatch, watchWork } from "./watch-work";
import { type Work, workInline } from "./work";

/** Imports the files of runs whose mapping is settled here and now, in turn. */
export async function runTrendImports(ctx: Context, buildingId: number, runIds: readonly number[]): Promise<void> {
  for (const runId of runIds) await runTrendImport(ctx, buildingId, runId);
}

/** Imports the file of one run whose mapping is settled, here and now. */
export async function runTrendImport(ctx: Context, buildingId: number, runId: number): Promise<ImportRunRow> {
  requireFacilities(ctx);
  const run = findImportRun(ctx.db, buildingId, runId);
  if (run?.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
  if (!run.answers) throw new ServiceError("precondition", `${run.fileName}: say first what its points are.`);
  return storeRun(ctx, runId, workInline(ctx));
}

/**
 * Stores the samples of one file as they are read. Repeating it is safe at any time: samples that are there already are
 * found the same, so an import that was cut off is completed by the next try.
 */
export async function storeRun(ctx: Context, runId: number, work: Work): Promise<ImportRunRow> {
  const from = ["waiting", "queued", "interrupted", "failed"] as const;
  const run = claimRun(ctx, runId, { from, to: "running", work });
  const watch = watchWork(ctx, run, work);
  try {
    const answers = answersOf(run);
    const inspection = await readyInspection(ctx, run, answers, watch);
    const mapped = mappedPoints(inspection, answers);
    const findings = new CollectedFindings();
    const stored = await storeParts(ctx, run, { mapped, answers, facts: inspection.facts, watch, findings, work });
    return await finishRun(ctx, run, work, { ...stored, findings: findings.list() });
  } catch (error) {
    const withdrawn = await endWithdrawn(ctx, run, work, error);
    if (withdrawn) return withdrawn;
    if (error instanceof ServiceError) await takeOut(ctx, run);
    failRun(
      ctx,
      run,
      work,
      error,
      "The import broke off. What was stored stays; bring the file in again to complete it.",
    );
    throw error;
  } finally {
    watch.stop();
  }
}

function answersOf(run: ImportRunRow): RunAnswers {
  const answers = run.answers as RunAnswers | null;
  if (!answers) throw new ServiceError("precondition", `${run.fileName}: say first what its points are.`);
  return answers;
}

/** What the file holds once its questions are answered. Refuses, before the first write, what must not be stored. */
async function readyInspection(
  ctx: Context,
  run: ImportRunRow,
  answers: RunAnswers,
  watch: WorkWatch,
): Promise<TrendInspection> {
  const kept = run.inspection as TrendInspection | null;
  const isAnswered = Object.values(answers.file).some((answer) => answer !== undefined);
  if (kept && !isAnswered) {
    refuseUnready(run, kept);
    return kept;
  }
  const inspection = await inspectKeptFile(ctx, run, { answers: trendAnswers(answers), watch, facts: kept?.facts });
  refuseUnready(run, inspection);
  watch.restart();
  return inspection;
}

type Storing = {
  mapped: readonly MappedPoint[];
  answers: RunAnswers;
  facts: TrendInspection["facts"];
  watch: WorkWatch;
  findings: CollectedFindings;
  work: Work;
};

async function storeParts(
  ctx: Context,
  run: ImportRunRow,
  { mapped, answers, facts, watch, findings, work }: Storing,
): Promise<{ result: TrendFileResult; written: WriteStats }> {
  const { timeZone } = findBuildingOrRefuse(ctx, run.buildingId);
  const source = openKeptFile(ctx, run);
  try {
    const parts =
      heldParts(run, answers, work) ??
      readTrendParts({ fileName: run.fileName, source, timeZone, answers: trendAnswers(answers), facts });
    const reading: { result?: TrendFileResult } = {};
    const slices = slicesOf(parts, await makePoints(ctx, run.buildingId, mapped), {
      findings,
      onPart: (progress) => watch.progress(progress, findings.list()),
      onEnd: (result) => {
        reading.result = result;
      },
    });
    const written = await ctx.trends.write(slices, run.id);
    if (!reading.result) throw new Error(`${run.fileName} was not read to its end`);
    // Only the end of a file tells whether its dates hold: then nothing of it may stay.
    refuseUnready(run, reading.result);
    return { result: reading.result, written };
  } finally {
    source.close();
  }
}

/** The readings as the inspection just left them, when no answer changes what they are. */
function heldParts(
  run: ImportRunRow,
  answers: RunAnswers,
  work: Work,
): AsyncGenerator<TrendPart, TrendFileResult> | null {
  const { held } = work;
  const { units, ...file } = trendAnswers(answers);
  const isAnswered = Object.values(file).some((answer) => answer !== undefined) || Object.keys(units ?? {}).length > 0;
  work.held = null;
  return held && held.runId === run.id && !isAnswered ? held.parts.replay(held.result) : null;
}

function refuseUnready(run: ImportRunRow, inspection: Pick<TrendInspection, "outcome" | "refusal" | "ask">): void {
  if (inspection.outcome === "refuse")
    throw new ServiceError("invalid", inspection.refusal?.sentence ?? `${run.fileName} could not be read.`);
  // A question about a point that is left out is of no consequence; a unit that is missing is refused by its point.
  const open = inspection.ask.filter((ask) => ask.what !== "unit");
  if (open.length > 0) throw new ServiceError("precondition", open.map((ask) => ask.question).join(" "));
}

function trendAnswers({ file, points }: RunAnswers): TrendAnswers {
  const units: Record<string, string> = {};
  for (const [name, choice] of Object.entries(points)) if (!choice.skip && choice.unit) units[name] = choice.unit;
  return { ...file, units };
}
