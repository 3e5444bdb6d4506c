import { expect, test } from "vitest";
import type { CaseTable } from "@/lib/business-case/case-document";
import { caseFinance } from "@/lib/business-case/case-finance";
import { composeCase } from "@/lib/business-case/compose-case";
import { lifeOfFirstYear } from "@/lib/business-case/first-year-life";
import { cashFlowRows } from "@/lib/business-case/sections/cash-flow-rows";
import { firstYearFraction } from "@/lib/overcooling/components/first-year-fraction";
import { caseInput } from "../../factories/case-input";

test("a case has the sections that a director, an engineer and an auditor look for, in that order", () => {
  expect(composeCase(caseInput()).sections.map(({ id }) => id)).toEqual([
    "summary",
    "method",
    "data-quality",
    "components",
    "alternatives",
    "comfort",
    "cautions",
    "finance",
    "emissions",
    "sensitivity",
    "verification",
    "assumptions",
    "workings",
  ]);
});

test("the same frozen input gives the same document, also after a way through text", () => {
  const once = composeCase(caseInput());
  expect(composeCase(JSON.parse(JSON.stringify(caseInput())))).toEqual(once);
});

test("printed components add up to the printed total", () => {
  const section = composeCase(caseInput()).sections.find(({ id }) => id === "components");
  const table = section?.blocks.find((each): each is CaseTable => each.kind === "table");
  const amount = (row: CaseTable["rows"][number]) => (row[1]?.kind === "money" ? row[1].amount : Number.NaN);
  const sum = (table?.rows ?? []).reduce((total, row) => total + Math.round(amount(row) * 100), 0);
  expect(sum).toBe(Math.round(amount(table?.total ?? []) * 100));
  expect(sum).toBe(305015);
});

test("printed cash flows add up to the printed cent, down to the net present value", () => {
  for (const amount of [760.6857976955926, 333.333, 1000 / 7]) {
    const input = caseInput({ saving: { ...caseInput().saving, stated: amount } });
    const { years, figures } = caseFinance(input);
    const rows = cashFlowRows(years, "USD").map((row) =>
      row.map((value) => (value.kind === "money" ? Math.round(value.amount * 100) : Number.NaN)),
    );
    let [cumulative, present] = [0, 0];
    for (const row of rows) {
      const [, outlay, saving, net, soFar, , presentValue, presentSoFar] = row as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      cumulative += saving - outlay;
      present += presentValue;
      expect([net, soFar, presentSoFar]).toEqual([saving - outlay, cumulative, present]);
    }
    expect(present).toBe(Math.round(figures.netPresentValue * 100));
  }
});

test("rows of a table have as many cells as the table has columns", () => {
  const tables = composeCase(caseInput()).sections.flatMap(({ blocks }) =>
    blocks.filter((each): each is CaseTable => each.kind === "table"),
  );
  expect(tables.length).toBeGreaterThan(10);
  for (const { columns, rows, total, id } of tables)
    for (const row of total ? [...rows, total] : rows) expect(row.length, id).toBe(columns.length);
});

test("the net present value at stated values, by hand", () => {
  // 3,050.154 a year rising by 1 %, 3 years, 3 %: 2,990.9277 + 2,932.8514 + 2,875.9028 - 1,970.55 = 6,829.13.
  const { figures, plan } = caseFinance(caseInput());
  expect(plan.outlay).toBeCloseTo(1970.55, 10);
  expect(figures.netPresentValue).toBeCloseTo(6829.13, 1);
});

test("a case without an assumption of its finance is refused", () => {
  expect(() => composeCase(caseInput({ assumptions: [] }))).toThrow(/change-life/);
});

test("the life is found from the share of the first year in which a change lasts", () => {
  for (const life of [0.3, 1, 3, 5, 20]) expect(lifeOfFirstYear(firstYearFraction(life))).toBeCloseTo(life, 6);
});
