import { inTransaction } from "@/db/client";
import { findImportRun, type ImportRunRow, updateImportRun } from "@/db/queries/import-runs";
import { upsertPoint } from "@/db/queries/points";
import { convertToStored } from "@/lib/importers/trend-csv/convert-to-stored";
import { readTrendFile } from "@/lib/importers/trend-csv/read-trend-file";
import type { TrendAnswers, TrendFinding, TrendPoint, TrendReading } from "@/lib/importers/trend-csv/trend-file";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { finishRun } from "./finish-run";
import type { PointChoice, RunAnswers } from "./run-input";

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
  const { run, answers, bytes } = claim(ctx, buildingId, runId);
  try {
    const reading = await readTrendFile({
      fileName: run.fileName,
      bytes,
      timeZone: building.timeZone,
      answers: trendAnswers(answers),
    });
    refuseUnready(run, reading);
    const mapped = mappedPoints(reading, answers);
    const ids = makePoints(ctx, buildingId, mapped);
    const findings: TrendFinding[] = [];
    const written = await ctx.trends.write(slicesOf(mapped, ids, findings), runId);
    return finishRun(ctx, run, reading, { written, findings });
  } catch (error) {
    const known = error instanceof ServiceError;
    const message = known
      ? error.message
      : "The import broke off. What was stored stays; bring the file in again to complete it.";
    updateImportRun(ctx.db, runId, { state: "failed", message, finishedAtMs: ctx.now });
    throw error;
  }
}

/** Takes a run for importing, so that the same form sent twice imports it once. */
function claim(ctx: Context, buildingId: number, runId: number) {
  return inTransaction(ctx.db, (tx) => {
    const run = findImportRun(tx, buildingId, runId);
    if (run?.kind !== "trends") throw new ServiceError("not-found", "This import does not exist.");
    if (run.state === "running")
      throw new ServiceError("conflict", `${run.fileName} is being imported at this moment. Look again in a minute.`);
    const answers = run.answers as RunAnswers | null;
    const bytes = ctx.uploads.read(run.sha256);
    if (!answers || !bytes)
      throw new ServiceError(
        "precondition",
        `${run.fileName}: say first what its points are, or bring the file in again.`,
      );
    updateImportRun(tx, runId, { state: "running", message: "" });
    return { run, answers, bytes };
  });
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

type Mapped = { point: TrendPoint; choice: Extract<PointChoice, { skip: false }> };

/** The points to be stored with their choices. Refuses before anything is written when a unit cannot be. */
function mappedPoints(reading: TrendReading, { points }: RunAnswers): Mapped[] {
  return reading.points.flatMap((point) => {
    const choice = points[point.name];
    if (!choice || choice.skip) return [];
    const none = new Float64Array(0);
    const verdict = convertToStored({ ...point, tsUtcSeconds: none, values: none }, choice.kind);
    if (verdict.status !== "ok") throw new ServiceError("invalid", verdict.sentence);
    return { point, choice };
  });
}

/** All of the file's points at once, before their samples: an import that is cut off is mapped when it is repeated. */
function makePoints(ctx: Context, buildingId: number, mapped: readonly Mapped[]): number[] {
  return inTransaction(ctx.db, (tx) =>
    mapped.map(
      ({ point, choice }) =>
        upsertPoint(tx, {
          buildingId,
          externalName: point.name,
          kind: choice.kind,
          zoneId: choice.zoneId,
          fileUnit: point.unit ?? choice.unit ?? point.unitAsWritten ?? "state",
          sampling: point.sampling,
        }).id,
    ),
  );
}

/** Readings as the store holds them, one point at a time. What the limits of a kind leave out is added to `findings`. */
function* slicesOf(mapped: readonly Mapped[], ids: readonly number[], findings: TrendFinding[]): Generator<TrendSlice> {
  for (const [i, { point, choice }] of mapped.entries()) {
    const stored = convertToStored(point, choice.kind);
    if (stored.status !== "ok") throw new Error(`${point.name} was accepted, but cannot be converted`);
    findings.push(...stored.findings);
    if (stored.ts.length > 0) yield { series: ids[i] as number, ts: stored.ts, v: stored.v, decimals: stored.decimals };
  }
}
