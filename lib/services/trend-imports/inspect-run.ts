import { findRunsWithBytes, type ImportRunRow } from "@/db/queries/import-runs";
import { HeldParts } from "@/lib/importers/trend-csv/held-parts";
import { inspectTrendSource } from "@/lib/importers/trend-csv/read-trend-parts";
import type { TrendAnswers, TrendFileResult, TrendInspection } from "@/lib/importers/trend-csv/trend-file";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { settleByProfile } from "../mapping-profiles/settle";
import { claimRun, releaseRun } from "./claim";
import { endWithdrawn, failRun } from "./end-badly";
import type { HeldReading } from "./read-ahead";
import { earlierRun } from "./receive";
import { type WorkWatch, watchWork } from "./watch-work";
import type { Work } from "./work";

/**
 * Reads a received file to its end for what it holds and what has to be asked, and stores no sample: afterwards it
 * waits for its mapping, or is refused. Of two names for one file the second is cancelled.
 */
export async function inspectRun(ctx: Context, runId: number, work: Work): Promise<ImportRunRow> {
  const run = claimRun(ctx, runId, { from: ["received"], to: "inspecting", work });
  const watch = watchWork(ctx, run, work);
  try {
    const inspection = await inspectKeptFile(ctx, run, { watch, holder: work });
    return settle(ctx, run, work, inspection);
  } catch (error) {
    const withdrawn = await endWithdrawn(ctx, run, work, error);
    if (withdrawn) return withdrawn;
    failRun(ctx, run, work, error, "The reading of this file broke off. Nothing of it is stored.");
    throw error;
  } finally {
    watch.stop();
  }
}

type HowToInspect = {
  answers?: TrendAnswers;
  watch: WorkWatch;
  facts?: TrendInspection["facts"];
  /** Who holds the readings for the import that may follow at once. */
  holder?: Work;
};

/** What the kept bytes of a run hold, read with the answers given. */
export async function inspectKeptFile(
  ctx: Context,
  run: ImportRunRow,
  { answers, watch, facts, holder }: HowToInspect,
): Promise<TrendInspection> {
  if (holder) holder.held = null;
  const { result, parts } =
    (holder && (await readAhead(run, holder, watch))) ?? (await readKept(ctx, run, { answers, watch, facts, holder }));
  if (holder && parts.isWhole) holder.held = { runId: run.id, parts, result };
  return inspectionAlone(result);
}

/** What was read of the file while it was copied, once that is whole. */
async function readAhead(run: ImportRunRow, work: Work, watch: WorkWatch): Promise<HeldReading | null> {
  const { ahead } = work;
  work.ahead = null;
  const isOfRun = ahead?.sha256 === run.sha256 && ahead.fileName === run.fileName;
  return isOfRun ? ahead.reading.finish(watch.progress) : null;
}

async function readKept(
  ctx: Context,
  run: ImportRunRow,
  { answers, watch, facts, holder }: HowToInspect,
): Promise<HeldReading> {
  const { timeZone } = findBuildingOrRefuse(ctx, run.buildingId);
  const source = openKeptFile(ctx, run);
  try {
    const parts = new HeldParts();
    const input = { fileName: run.fileName, source, timeZone, answers, facts };
    return { result: await inspectTrendSource(input, watch.progress, holder && parts), parts };
  } finally {
    source.close();
  }
}

/** The inspection without the fates of the rows, as it is kept with a run. */
export function inspectionAlone({ rows: _rows, rowNotes: _notes, ...inspection }: TrendFileResult): TrendInspection {
  return inspection;
}

export function openKeptFile(ctx: Context, { sha256, fileName }: ImportRunRow) {
  const source = ctx.uploads.open(sha256);
  if (!source)
    throw new ServiceError("precondition", `The bytes of ${fileName} are no longer kept: bring the file in again.`);
  return source;
}

function settle(ctx: Context, run: ImportRunRow, work: Work, inspection: TrendInspection): ImportRunRow {
  const finishedAtMs = work.clock();
  if (inspection.outcome === "refuse") {
    const message = inspection.refusal?.sentence ?? "The file could not be read.";
    const refused = releaseRun(ctx, run, work, { state: "refused", message, inspection, finishedAtMs });
    if (findRunsWithBytes(ctx.db, run.sha256).every(({ state }) => state === "refused")) ctx.uploads.remove(run.sha256);
    return refused;
  }
  const same = sameFileBefore(ctx, run, inspection);
  if (!same) {
    const settlement = settleByProfile(ctx, run, inspection);
    if (settlement.status !== "fits") return releaseRun(ctx, run, work, { state: "waiting", inspection });
    return releaseRun(ctx, run, work, { state: "queued", inspection, answers: settlement.answers });
  }
  const message = `The same file as ${same.fileName}, import ${same.id}: taken in once.`;
  return releaseRun(ctx, run, work, { state: "cancelled", message, inspection, finishedAtMs });
}

/** Another import of the same bytes, when its other name makes no difference. */
function sameFileBefore(ctx: Context, run: ImportRunRow, inspection: TrendInspection): ImportRunRow | null {
  if (inspection.findings.some((finding) => finding.code === "name-from-file")) return null;
  return earlierRun(ctx.db, run.buildingId, run, run.id)?.run ?? null;
}
