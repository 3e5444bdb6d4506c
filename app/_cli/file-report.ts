import { ServiceError } from "@/lib/services/errors";
import type { FileImport } from "@/lib/services/trend-imports/import-file";

/** What became of one file that a command brought in. */
export type FileReport = FileImport | { file: string; outcome: "failed"; message: string };

/** A file that cannot be brought in does not stop the others; a fault of the program does. */
export function failureReport(file: string, error: unknown): FileReport {
  if (!(error instanceof ServiceError)) throw error;
  return { file, outcome: "failed", message: error.message };
}

/** 0 all imported or unchanged, 1 one failed, 3 a question is open (nothing of that file is stored), 4 one was refused. */
export function exitCodeOf(reports: readonly Pick<FileReport, "outcome">[]): number {
  const has = (outcome: FileReport["outcome"]) => reports.some((each) => each.outcome === outcome);
  if (has("failed")) return 1;
  if (has("refused")) return 4;
  return has("asked") ? 3 : 0;
}

/** A report for a person to read. */
export function reportLines(report: FileReport): string[] {
  const lines = [`${report.file}: ${report.outcome}. ${report.message}`];
  if (report.outcome === "failed") return lines;
  const { rows } = report;
  if (rows)
    lines.push(
      `  rows ${rows.rowsInFile} = ${rows.accepted} accepted + ${rows.repaired} repaired + ${rows.heldBack} held back + ${rows.rejected} rejected + ${rows.ignored} ignored`,
    );
  for (const { name, kind, zone } of report.mapped)
    lines.push(`  ${name}: ${kind}${zone === null ? "" : ` of ${zone}`}`);
  for (const { name, reason } of report.open) lines.push(`  open: ${name}: ${reason}`);
  for (const { what, choices, proposal } of report.ask)
    lines.push(`  asked: --answer ${what}=${choices.join("|")}${proposal ? ` (proposed: ${proposal})` : ""}`);
  for (const { name, reason } of report.leftOut) lines.push(`  left out: ${name}: ${reason}`);
  if (report.outcome === "imported") for (const { reason } of report.cautions) lines.push(`  caution: ${reason}`);
  for (const { severity, sentence } of report.findings) lines.push(`  ${severity}: ${sentence}`);
  if (report.outcome === "asked")
    lines.push("  Map the points on the imports page, or repeat with --accept-proposals and the answers asked for.");
  return lines;
}
