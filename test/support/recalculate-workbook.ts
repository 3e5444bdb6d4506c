import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Papa from "papaparse";

/** The office program that recalculates workbooks, or null where it is not installed. */
export const officeProgram = (): string | null => {
  try {
    return execFileSync("which", ["soffice"], { encoding: "utf8" }).trim() || null;
  } catch {
    return null;
  }
};

/** Cells of every sheet as an office program recalculates them, as text in full precision; by the sheet's name. */
export function recalculated(
  program: string,
  workbook: Uint8Array,
  sheets: readonly string[],
): Map<string, string[][]> {
  const folder = mkdtempSync(path.join(tmpdir(), "workbook-"));
  try {
    const file = path.join(folder, "case.xlsx");
    writeFileSync(file, workbook);
    // The last three options of the filter: cell contents as values, not as shown; formulas as results; all sheets.
    execFileSync(
      program,
      [
        "--headless",
        `-env:UserInstallation=file://${folder}/profile`,
        "--convert-to",
        "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1",
        "--outdir",
        folder,
        file,
      ],
      { stdio: "pipe", timeout: 100_000 },
    );
    return new Map(
      sheets.map((name) => {
        const text = readFileSync(path.join(folder, `case-${name}.csv`), "utf8");
        return [name, Papa.parse<string[]>(text).data];
      }),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
