import { type CaseSection, money, moneyRange, number, text } from "../case-document";
import type { CaseFinance } from "../case-finance";
import type { CaseInput } from "../case-input";
import { cashFlowRows } from "./cash-flow-rows";
import { openYears } from "./open-years";

/** What the change is worth, by the conventions of NIST Handbook 135, with the flow of each year. */
export function financeSection({ building, terms }: CaseInput, finance: CaseFinance): CaseSection {
  const { plan, figures, ranges, years } = finance;
  const per = building.currency;
  return {
    id: "finance",
    title: "Finance",
    startsPage: true,
    blocks: [
      {
        kind: "paragraph",
        runs: [
          `Constant prices of the day of issue and a real discount rate of ${(plan.rate * 100).toFixed(1)} % a year, without inflation in either; energy prices rise by ${(plan.escalation * 100).toFixed(1)} % a year beyond inflation. Flows fall at the ${plan.timing} of each year. The change is taken to last ${plan.lifeYears} years, as what it saves in its first year, and then to be undone: of a setpoint no more can be promised. No yearly upkeep is counted.`,
        ],
      },
      {
        kind: "figures",
        figures: [
          {
            label: "Simple payback",
            value: openYears(ranges.simplePaybackYears),
            note: `at stated values ${figures.simplePaybackYears === null ? "never" : `${figures.simplePaybackYears.toFixed(2)} years`}`,
          },
          {
            label: "Discounted payback",
            value:
              finance.discountedPaybackYears === null
                ? text("not within the life of the change")
                : number(finance.discountedPaybackYears, 2, "years"),
            note: "at stated values",
          },
          {
            label: "Net present value",
            value: moneyRange(ranges.netPresentValue),
            note: "80 % range, saving and life drawn together",
          },
          {
            label: "Net present value, stated",
            value: money(figures.netPresentValue, "minor"),
            note: "sum of the last column but one below",
          },
          {
            label: "Savings-to-investment ratio",
            value:
              figures.savingsToInvestment === null
                ? text("none without an outlay")
                : number(figures.savingsToInvestment, 2),
            note:
              ranges.savingsToInvestment === null
                ? ""
                : `${ranges.savingsToInvestment.p10.toFixed(2)} to ${ranges.savingsToInvestment.p90.toFixed(2)}, 80 % range`,
          },
        ],
      },
      {
        kind: "table",
        id: "outlay",
        caption: `Outlay, ${per}`,
        columns: [
          { head: "What", align: "text" },
          { head: per, align: "number" },
        ],
        rows: terms.outlay.map(({ label, amount }) => [text(label), money(amount, "minor")]),
        total: [text("together"), money(plan.outlay, "minor")],
      },
      {
        kind: "chart",
        chart: { kind: "cash-flow", id: "cash-flow", caption: `Cash flow by year, ${per}, stated values`, years },
      },
      {
        kind: "table",
        id: "cash-flow",
        caption: `Cash flow by year, ${per}, stated values`,
        columns: [
          { head: "Year", align: "text" },
          { head: "Outlay", align: "number" },
          { head: "Saving", align: "number" },
          { head: "Net", align: "number" },
          { head: "Cumulative", align: "number" },
          { head: "Present factor", align: "number" },
          { head: "Present value", align: "number" },
          { head: "Cumulative present value", align: "number" },
        ],
        rows: cashFlowRows(years, building.currency),
        total: null,
      },
    ],
  };
}
