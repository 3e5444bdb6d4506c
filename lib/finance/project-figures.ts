import type { CashFlowPlan } from "./cash-flow";
import { singlePresentValue } from "./present-value";

export type ProjectFigures = {
  /** Outlay over what a whole first year brings, not discounted; null where it brings nothing. */
  simplePaybackYears: number | null;
  /** Present value of what is saved, after upkeep. */
  presentSavings: number;
  netPresentValue: number;
  /** `presentSavings` over the outlay; null without an outlay. */
  savingsToInvestment: number | null;
};

/**
 * Figures of a change with a life of its own, which need not be whole years (NIST Handbook 135: SPB, NS, SIR).
 * Payback at today's prices, as the handbook has it.
 */
export function projectFigures(plan: CashFlowPlan): ProjectFigures {
  const { outlay, lifeYears } = plan;
  let presentSavings = 0;
  for (let year = 1; year <= Math.ceil(lifeYears); year++) {
    const inForce = Math.min(1, lifeYears - (year - 1));
    const saving = plan.savingPerYear * (1 + plan.escalation) ** year - plan.upkeepPerYear;
    presentSavings += saving * inForce * singlePresentValue(plan.rate, year, plan.timing);
  }
  const firstYear = plan.savingPerYear - plan.upkeepPerYear;
  return {
    simplePaybackYears: outlay === 0 ? 0 : firstYear > 0 ? outlay / firstYear : null,
    presentSavings,
    netPresentValue: presentSavings - outlay,
    savingsToInvestment: outlay > 0 ? presentSavings / outlay : null,
  };
}
