import type { ImportRunRow } from "@/db/queries/import-runs";
import type { TrendInspection } from "@/lib/importers/trend-csv/trend-file";

/**
 * Whether a run of the same bytes was of the same file. Where the point takes its name from the file's, another file
 * name is another point: two valves that never opened have the same bytes. Of a run that was not read yet that is not
 * known, so that it is taken for another file's until it was.
 */
export function isRunOfFile(run: ImportRunRow, fileName: string): boolean {
  if (run.fileName === fileName) return true;
  const inspection = run.inspection as TrendInspection | null;
  return inspection !== null && !inspection.findings.some((finding) => finding.code === "name-from-file");
}
