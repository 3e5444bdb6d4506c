import { singlePresentValue, type Timing, uniformPresentValue } from "./present-value";

/** Money laid out now for a saving that comes each year, in constant prices with a real discount rate. */
export type Investment = { outlay: number; savingPerYear: number; years: number; rate: number };

export type InvestmentFigures = {
  /** Years until the savings, not discounted, have paid the outlay; null where nothing is saved. */
  simplePaybackYears: number | null;
  netPresentValue: number;
  /** Present value of savings over outlay; null without an outlay. */
  savingsToInvestment: number | null;
  /** Yearly rate of return with savings put out again at the discount rate; null without an outlay or without savings. */
  adjustedReturn: number | null;
  /** Rate at which the net present value is 0; null where there is none above -99 %. */
  internalReturn: number | null;
};

/** Figures of an investment by the formulas of NIST Handbook 135 (reference F1). Money in one unit, rates as fractions. */
export function investmentFigures(plan: Investment, timing: Timing = "end"): InvestmentFigures {
  const { outlay, savingPerYear, years, rate } = plan;
  const savings = savingPerYear * uniformPresentValue(rate, years, timing);
  const ratio = outlay > 0 ? savings / outlay : null;
  return {
    simplePaybackYears: savingPerYear > 0 ? outlay / savingPerYear : null,
    netPresentValue: savings - outlay,
    savingsToInvestment: ratio,
    adjustedReturn: ratio !== null && ratio > 0 ? (1 + rate) * ratio ** (1 / years) - 1 : null,
    internalReturn: internalReturn(plan),
  };
}

/** Bisection between -99 % and 10,000 %: the present value of level savings falls steadily with the rate. */
function internalReturn({ outlay, savingPerYear, years }: Investment): number | null {
  const value = (rate: number): number => {
    let sum = -outlay;
    for (let year = 1; year <= years; year++) sum += savingPerYear * singlePresentValue(rate, year);
    return sum;
  };
  let [low, high] = [-0.99, 100];
  if (!(value(low) >= 0 && value(high) <= 0)) return null;
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (value(middle) >= 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
