import { type WriteSheet, writeXlsx } from "hucre/xlsx";
import { type CaseFinance, caseFinance } from "@/lib/business-case/case-finance";
import type { CaseInput } from "@/lib/business-case/case-input";
import { cashFlowSheet } from "./case-sheets/cash-flow";
import { inputsSheet } from "./case-sheets/inputs";
import { assumptionsSheet, sensitivitySheet, variantsSheet } from "./case-sheets/lists";
import { summarySheet } from "./case-sheets/summary";
import { workingsSheet } from "./case-sheets/workings";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";

/** A business case as a workbook whose formulas recompute its totals from its inputs: dated by its issue, so that it is the same at any time. */
export function caseWorkbook(input: CaseInput): Promise<Uint8Array> {
  const issued = new Date(input.issuedAtMs);
  return writeXlsx({ sheets: caseSheets(input), properties: { created: issued, modified: issued } });
}

export function caseSheets(input: CaseInput): WriteSheet[] {
  const finance = caseFinance(input);
  const inputs = inputsSheet(input, finance);
  const flow = cashFlowSheet(finance, inputs.places);
  return [
    summarySheet(input, finance, inputs.places, flow.places),
    inputs.sheet,
    flow.sheet,
    variantsSheet(input),
    sensitivitySheet(input, finance),
    assumptionsSheet(input),
    workingsSheet(input, finance),
  ];
}

/** The case's tables of numbers as CSV, exact. */
export function caseCsvFiles(input: CaseInput): ExportedFile[] {
  const { building, parts, saving, assumptions } = input;
  const per = building.currency;
  const { years, figures }: CaseFinance = caseFinance(input);
  return [
    {
      fileName: "components.csv",
      text: csvText(
        ["component", `stated (${per}/year)`],
        [...parts.map(({ label, statedPerYear }) => [label, statedPerYear]), ["together", saving.stated]],
      ),
    },
    {
      fileName: "cash-flow.csv",
      text: csvText(
        [
          "year",
          "share in force",
          ...["outlay", "saving", "net", "cumulative"].map((each) => `${each} (${per})`),
        ].concat("present factor", `present value (${per})`, `cumulative present value (${per})`),
        years.map((each) => [
          each.year,
          each.inForce,
          each.outlay,
          each.saving,
          each.net,
          each.cumulative,
          each.presentFactor,
          each.presentValue,
          each.presentCumulative,
        ]),
      ),
    },
    {
      fileName: "finance.csv",
      text: csvText(
        ["figure", "unit", "value"],
        [
          ["simple payback", "years", figures.simplePaybackYears],
          ["net present value", per, figures.netPresentValue],
          ["savings-to-investment ratio", "", figures.savingsToInvestment],
        ],
      ),
    },
    {
      fileName: "assumptions.csv",
      text: csvText(
        ["assumption", "label", "unit", "value", "low", "high", "origin", "source"],
        assumptions.map((each) => [
          each.id,
          each.label,
          each.unit,
          each.value,
          each.low,
          each.high,
          each.origin,
          each.source,
        ]),
      ),
    },
  ];
}
