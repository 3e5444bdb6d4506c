import { type WriteSheet, writeXlsx } from "hucre/xlsx";
import { describe, expect, test } from "vitest";
import { caseFinance } from "@/lib/business-case/case-finance";
import { caseCsvFiles, caseSheets } from "@/lib/services/exports/case-workbook";
import { caseInput } from "../../../factories/case-input";
import { officeProgram, recalculated } from "../../../support/recalculate-workbook";

/** The workbook without the values that its formulas have now: whoever reads it must work them out. */
const withoutResults = (sheets: WriteSheet[]): WriteSheet[] =>
  sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows?.map((row, at) =>
      row.map((value, column) => (sheet.cells?.get(`${at},${column}`)?.formula ? null : value)),
    ),
    cells: new Map([...(sheet.cells ?? [])].map(([key, { formulaResult: _, ...cell }]) => [key, cell])),
  }));

const program = officeProgram();
const CASES = [
  ["a whole number of years", caseInput()],
  ["a life of two and a half years, flows in the middle", lifeOf(2.5, "middle")],
  ["no outlay", caseInput({ terms: { outlay: [], timing: "end" } })],
] as const;

function lifeOf(value: number, timing: "middle") {
  const input = caseInput();
  return {
    ...input,
    terms: { ...input.terms, timing },
    assumptions: input.assumptions.map((each) => (each.id === "change-life" ? { ...each, value } : each)),
  };
}

describe.skipIf(program === null)("recalculated by an office program (skipped where soffice is not installed)", () => {
  test.each(CASES)(
    "the workbook gives the tool's totals to the cent and no error: %s",
    async (_, input) => {
      const sheets = withoutResults(caseSheets(input));
      const names = sheets.map(({ name }) => name);
      const cells = recalculated(program as string, await writeXlsx({ sheets }), names);
      for (const [name, rows] of cells)
        for (const row of rows) for (const cell of row) expect(cell, name).not.toMatch(/^(#|Err:)/);

      const { figures, years, plan } = caseFinance(input);
      const summary = new Map((cells.get("Summary") ?? []).map((row) => [row[0], row[1]]));
      expect(Number(summary.get("saving in the first year"))).toBeCloseTo(plan.savingPerYear, 2);
      expect(Number(summary.get("outlay"))).toBeCloseTo(plan.outlay, 2);
      expect(Number(summary.get("net present value"))).toBeCloseTo(figures.netPresentValue, 2);
      expect(Number(summary.get("simple payback"))).toBeCloseTo(figures.simplePaybackYears ?? Number.NaN, 8);
      if (figures.savingsToInvestment === null) {
        expect(summary.get("savings-to-investment ratio")).toBe("none without an outlay");
      } else {
        expect(Number(summary.get("savings-to-investment ratio"))).toBeCloseTo(figures.savingsToInvestment, 8);
      }
      const flow = cells.get("Cash flow") ?? [];
      for (const [at, year] of years.entries()) {
        const row = (flow[at + 1] ?? []).map(Number);
        for (const [column, value] of [year.year, year.inForce, year.outlay, year.saving, year.net].entries())
          expect(row[column]).toBeCloseTo(value, 2);
        expect(row[8]).toBeCloseTo(year.presentCumulative, 2);
      }
      const workings = cells.get("Workings") ?? [];
      const live = workings.filter((row) => row[4] === "live");
      const emissions = live.find((row) => row[1] === "emissions saved");
      expect(Number(emissions?.[2])).toBeCloseTo(24000 * 0.348 + 9000 * 0.181, 6);
      expect(Number(live.find((row) => row[1] === "net present value")?.[2])).toBeCloseTo(figures.netPresentValue, 2);
    },
    120_000,
  );
});

test("totals are formulas, not numbers", () => {
  const sheets = new Map(caseSheets(caseInput()).map((sheet) => [sheet.name, sheet]));
  const formulas = [...(sheets.get("Summary")?.cells?.values() ?? [])].flatMap(({ formula }) => formula ?? []);
  expect(formulas).toHaveLength(5);
  const flow = [...(sheets.get("Cash flow")?.cells?.values() ?? [])].flatMap(({ formula }) => formula ?? []);
  expect(flow).toHaveLength(11 * 8);
});

test("tables of numbers come as CSV as well, exact", () => {
  const files = new Map(caseCsvFiles(caseInput()).map(({ fileName, text }) => [fileName, text]));
  expect([...files.keys()]).toEqual(["components.csv", "cash-flow.csv", "finance.csv", "assumptions.csv"]);
  expect(files.get("components.csv")?.trim().split("\r\n").at(-1)).toMatch(/^together,3050\.154/);
});
