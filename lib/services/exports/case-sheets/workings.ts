import type { WriteSheet } from "hucre/xlsx";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput } from "@/lib/business-case/case-input";
import { caseWorkings } from "@/lib/business-case/sections/appendix";
import { type LiveCell, liveSheet, strong } from "../live-sheet";
import { formulaOfWorking } from "./formula-of-working";

/** Every working with its terms in rows and its result as a formula of them, where a spreadsheet can compute it. */
export function workingsSheet(input: CaseInput, finance: CaseFinance): WriteSheet {
  const rows: LiveCell[][] = [
    ["Values at their stated ends; results that are live are recomputed from the rows above them."],
    [],
  ];
  for (const { title, working } of caseWorkings(input, finance)) {
    rows.push([strong(title), `as written: ${working.formula}`]);
    const first = rows.length + 1;
    for (const { symbol, label, value, unit, source } of working.terms)
      rows.push([symbol, label, value, unit, source ?? ""]);
    const { symbol, label, value, unit } = working.result;
    const formula = formulaOfWorking(
      working,
      working.terms.map((_, at) => `C${first + at}`),
    );
    rows.push([
      strong(symbol),
      strong(label),
      formula === null ? value : { formula, value },
      unit,
      formula === null ? "value as frozen" : "live",
    ]);
    rows.push([]);
  }
  return liveSheet("Workings", rows, [14, 60, 18, 16, 80]);
}
