import { inTransaction } from "@/db/client";
import {
  deleteImportRows,
  findRunsOfFile,
  type ImportRunRow,
  insertImportRows,
  updateImportRun,
} from "@/db/queries/import-runs";
import { inspectionOf } from "@/lib/importers/trend-csv/inspect-trend-file";
import type { TrendFinding, TrendReading } from "@/lib/importers/trend-csv/trend-file";
import type { WriteStats } from "@/lib/trends/trend-store";
import type { Context } from "../context";
import { isRunOfFile } from "./same-file";

/**
 * Records what an import did: the fate of every row, what was stored, and the findings of the reading as it was done
 * (answers settle some that were there when the file was taken in) and of the conversion.
 */
export function finishRun(
  ctx: Context,
  run: ImportRunRow,
  reading: TrendReading,
  { written, findings }: { written: WriteStats; findings: readonly TrendFinding[] },
): ImportRunRow {
  const { rows } = reading;
  const inspection = inspectionOf(reading);
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
    inspection: { ...inspection, findings: [...inspection.findings, ...findings] },
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
      if (earlier.id !== run.id && isRunOfFile(earlier, run.fileName))
        updateImportRun(tx, earlier.id, { state: "interrupted", message: `Completed by import ${run.id}.` });
  });
  return { ...run, ...result };
}
