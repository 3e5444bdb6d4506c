import { setImmediate as nextTurn } from "node:timers/promises";
import {
  deleteImportRows,
  findRunsOfFile,
  type ImportRunRow,
  insertImportRows,
  updateImportRun,
} from "@/db/queries/import-runs";
import { makeFinding } from "@/lib/importers/trend-csv/findings";
import type { RowNote, TrendFileResult, TrendFinding } from "@/lib/importers/trend-csv/trend-file";
import type { WriteStats } from "@/lib/trends/trend-store";
import { formatNumber } from "@/lib/units/format";
import type { Context } from "../context";
import { releaseRun } from "./claim";
import { inspectionAlone } from "./inspect-run";
import { isRunOfFile } from "./same-file";
import type { Work } from "./work";

/** Row notes written in one go: nobody else waits long for the rows. */
const NOTES_AT_ONCE = 200;

/**
 * Records what an import did: the fate of every row, what was stored, and the findings of the reading as it was done
 * (answers settle some that were there when the file was taken in) and of the conversion.
 */
export async function finishRun(
  ctx: Context,
  run: ImportRunRow,
  work: Work,
  done: { result: TrendFileResult; written: WriteStats; findings: readonly TrendFinding[] },
): Promise<ImportRunRow> {
  const { result, written, findings } = done;
  const { rows } = result;
  await keepRowNotes(ctx, run, result.rowNotes);
  const inspection = inspectionAlone(result);
  const finished = releaseRun(ctx, run, work, {
    state: "done",
    message: storedWords(written),
    rowsInFile: rows.rowsInFile,
    rowsAccepted: rows.accepted,
    rowsRepaired: rows.repaired,
    rowsHeldBack: rows.heldBack,
    rowsRejected: rows.rejected,
    rowsIgnored: rows.ignored,
    samplesAdded: written.added,
    samplesChanged: written.changed,
    samplesSame: written.same,
    inspection: { ...inspection, findings: [...inspection.findings, ...findings, ...repeatedFindings(written)] },
    finishedAtMs: work.clock(),
  });
  // Earlier tries of the same file that never ended are complete with this one.
  for (const earlier of findRunsOfFile(ctx.db, run.buildingId, run.sha256, ["interrupted", "failed"]))
    if (earlier.id !== run.id && isRunOfFile(earlier, run.fileName))
      updateImportRun(ctx.db, earlier.id, { state: "interrupted", message: `Completed by import ${run.id}.` });
  return finished;
}

function storedWords({ added, changed, same }: WriteStats): string {
  const [addedWords, ...others] = [added, changed, same].map((value) => formatNumber(value, { decimals: 0 }));
  return `${addedWords} ${added === 1 ? "sample" : "samples"} added, ${others[0]} changed, ${others[1]} as they were.`;
}

/** Readings that the file gives again far from where it gave them first; those near by were told apart as it was read. */
function repeatedFindings({ repeated }: WriteStats): TrendFinding[] {
  const evidence = "far apart in the file";
  return [
    ...(repeated.same > 0 ? [makeFinding("duplicate-identical", { count: repeated.same, evidence })] : []),
    ...(repeated.changed > 0 ? [makeFinding("duplicate-conflicting", { count: repeated.changed, evidence })] : []),
  ];
}

async function keepRowNotes(ctx: Context, run: ImportRunRow, notes: readonly RowNote[]): Promise<void> {
  deleteImportRows(ctx.db, run.id);
  for (let start = 0; start < notes.length; start += NOTES_AT_ONCE) {
    const some = notes.slice(start, start + NOTES_AT_ONCE).map(({ line, fate, code, excerpt, file }) => ({
      line,
      fate,
      code,
      excerpt: file ? `${file}: ${excerpt}` : excerpt,
    }));
    insertImportRows(ctx.db, run.id, some);
    await nextTurn();
  }
}
