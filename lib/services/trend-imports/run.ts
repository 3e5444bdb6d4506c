import { inTransaction } from "@/db/client";
import {
  deleteImportRows,
  findImportRun,
  findRunsOfFile,
  type ImportRunRow,
  insertImportRows,
  updateImportRun,
} from "@/db/queries/import-runs";
import { upsertPoint } from "@/db/queries/points";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendAnswers, TrendPoint, TrendReading } from "@/lib/importers/trend-csv/trend-file";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import type { RunAnswers } from "./confirm";
import type { PointChoice } from "./run-input";

/** Imports the files of runs whose mapping is settled, in turn. */
export async function runTrendImports(ctx: Context, buildingId: number, runIds: readonly number[]): Promise<void> {
  for (const runId of runIds) await runTrendImport(ctx, buildingId, runId);
}

/**
 * Stores the samples of one file. Repeating it is safe at any time: samples that are there already are found the
 * same, so an import that was cut off is completed by the next try.
 */
export async function runTrendImport(ctx: Context, buildingId: number, runId: number): Promise<ImportRunRow> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const run = findImportRun(ctx.db, buildingId, runId);
  if (!run || run.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
  const answers = run.answers as RunAnswers | null;
  const bytes = ctx.uploads.read(run.sha256);
  if (!answers || !bytes)
    throw new ServiceError(
      "precondition",
      `${run.fileName}: say first what its points are, or bring the file in again.`,
    );
  updateImportRun(ctx.db, runId, { state: "running" });
  try {
    const reading = await readTrendFile({
      fileName: run.fileName,
      bytes,
      timeZone: building.timeZone,
      answers: trendAnswers(answers),
    });
    refuseUnready(run, reading);
    const written = await ctx.trends.write(slicesOf(ctx, buildingId, reading, answers), runId);
    return finish(ctx, run, reading, written);
  } catch (error) {
    const known = error instanceof ServiceError;
    const message = known
      ? error.message
      : "The import broke off. What was stored stays; bring the file in again to complete it.";
    updateImportRun(ctx.db, runId, { state: "failed", message, finishedAtMs: ctx.now });
    throw error;
  }
}

function trendAnswers({ file, points }: RunAnswers): TrendAnswers {
  const units: Record<string, string> = {};
  for (const [name, choice] of Object.entries(points)) if (!choice.skip && choice.unit) units[name] = choice.unit;
  return { ...file, units };
}

function refuseUnready(run: ImportRunRow, reading: TrendReading): void {
  if (reading.outcome === "refuse")
    throw new ServiceError("invalid", reading.refusal?.sentence ?? `${run.fileName} could not be read.`);
  // A question about a point that is left out is of no consequence.
  const open = reading.ask.filter((ask) => ask.what !== "unit");
  if (open.length > 0) throw new ServiceError("precondition", open.map((ask) => ask.question).join(" "));
}

/** Makes the points and turns their readings into what the store holds, one point at a time. */
function* slicesOf(
  ctx: Context,
  buildingId: number,
  reading: TrendReading,
  { points }: RunAnswers,
): Generator<TrendSlice> {
  for (const point of reading.points) {
    const choice = points[point.name];
    if (!choice || choice.skip) continue;
    const stored = convertToStored(withUnit(point, choice), choice.kind);
    if (stored.status !== "ok") throw new ServiceError("invalid", stored.sentence);
    const { id } = upsertPoint(ctx.db, {
      buildingId,
      externalName: point.name,
      kind: choice.kind,
      zoneId: choice.zoneId,
      fileUnit: choice.unit ?? point.unit ?? point.unitAsWritten ?? "state",
      sampling: point.sampling,
    });
    if (stored.ts.length > 0) yield { series: id, ts: stored.ts, v: stored.v, decimals: stored.decimals };
  }
}

const withUnit = (point: TrendPoint, choice: Extract<PointChoice, { skip: false }>): TrendPoint =>
  choice.unit && point.unit === null ? { ...point, unit: choice.unit as TrendPoint["unit"] } : point;

function finish(
  ctx: Context,
  run: ImportRunRow,
  reading: TrendReading,
  written: { added: number; changed: number; same: number },
): ImportRunRow {
  const { rows } = reading;
  const result = {
    state: "done" as const,
    message: `${written.added} samples added, ${written.changed} changed, ${written.same} as they were.`,
    rowsInFile: rows.rowsInFile,
    rowsAccepted: rows.accepted,
    rowsRepaired: rows.repaired,
    rowsHeldBack: rows.heldBack,
    rowsRejected: rows.rejected,
    rowsIgnored: rows.ignored,
    samplesAdded: written.added,
    samplesChanged: written.changed,
    samplesSame: written.same,
    finishedAtMs: ctx.now,
  };
  inTransaction(ctx.db, (tx) => {
    deleteImportRows(tx, run.id);
    insertImportRows(
      tx,
      run.id,
      reading.rowNotes.map(({ line, fate, code, excerpt, file }) => ({
        line,
        fate,
        code,
        excerpt: file ? `${file}: ${excerpt}` : excerpt,
      })),
    );
    updateImportRun(tx, run.id, result);
    // Earlier tries of the same file that never ended are complete with this one.
    for (const earlier of findRunsOfFile(tx, run.buildingId, run.sha256, ["running", "interrupted", "failed"]))
      if (earlier.id !== run.id)
        updateImportRun(tx, earlier.id, { state: "interrupted", message: `Completed by import ${run.id}.` });
  });
  return { ...run, ...result };
}
