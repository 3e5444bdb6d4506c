import { expect, test } from "vitest";
import { investmentFigures } from "@/lib/finance/investment";
import {
  escalatedPresentValue,
  nominalRate,
  singlePresentValue,
  uniformPresentValue,
} from "@/lib/finance/present-value";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

test.each(loadCheckValues<{ d: number; n: number[]; e: number }>("finance/present-value-factors").cases)(
  "present value factors are those of the handbook: $name",
  (check) => {
    const { d, n, e } = check.inputs;
    compareWithCase(check, {
      SPV: n.map((years) => singlePresentValue(d, years)),
      UPV: n.map((years) => uniformPresentValue(d, years)),
      UPV_star_e1pct: n.map((years) => escalatedPresentValue(d, e, years)),
    });
  },
);

test.each(loadCheckValues<{ d: number; year: number }>("finance/timing").cases)(
  "a payment in the middle or at the beginning of a year is worth more: $name",
  (check) => {
    const { d, year } = check.inputs;
    compareWithCase(check, {
      end: singlePresentValue(d, year),
      mid: singlePresentValue(d, year, "middle"),
      begin: singlePresentValue(d, year, "beginning"),
    });
  },
);

type Worked = { I0: number; A: number; n: number; d_real: number; inflation: number };
test.each(loadCheckValues<Worked>("finance/life-cycle").cases)("an investment's figures: $name", (check) => {
  const { I0: outlay, A: savingPerYear, n: years, d_real: rate, inflation } = check.inputs;
  const plan = { outlay, savingPerYear, years, rate };
  const figures = investmentFigures(plan);
  const nominal = nominalRate(rate, inflation);
  compareWithCase(check, {
    SPB_yr: figures.simplePaybackYears ?? Number.NaN,
    NPV_real_endyear: figures.netPresentValue,
    d_nominal: nominal,
    NPV_nominal_escalated: savingPerYear * escalatedPresentValue(nominal, inflation, years) - outlay,
    NPV_real_midyear: investmentFigures(plan, "middle").netPresentValue,
    SIR: figures.savingsToInvestment ?? Number.NaN,
    AIRR: figures.adjustedReturn ?? Number.NaN,
    IRR_real: figures.internalReturn ?? Number.NaN,
    NPV_if_nominal_rate_misapplied_to_real_savings: investmentFigures({ ...plan, rate: nominal }).netPresentValue,
  });
});

test("a change that costs nothing or saves nothing has no ratio, no return or no payback, and says so", () => {
  const free = investmentFigures({ outlay: 0, savingPerYear: 100, years: 3, rate: 0 });
  expect(free).toEqual({
    simplePaybackYears: 0,
    netPresentValue: 300,
    savingsToInvestment: null,
    adjustedReturn: null,
    internalReturn: null,
  });
  const idle = investmentFigures({ outlay: 100, savingPerYear: 0, years: 3, rate: 0.03 });
  expect([idle.simplePaybackYears, idle.netPresentValue, idle.adjustedReturn]).toEqual([null, -100, null]);
});
