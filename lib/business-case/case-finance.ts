import { type CashFlowPlan, type CashFlowYear, cashFlowByYear, discountedPaybackYears } from "@/lib/finance/cash-flow";
import { type ProjectFigures, projectFigures } from "@/lib/finance/project-figures";
import { type ProjectRanges, projectRanges } from "@/lib/finance/project-ranges";
import type { CaseAssumption, CaseInput } from "./case-input";

/** Assumptions that the finance rests on; a case that was frozen without one of them cannot be worked out. */
const LIFE = "change-life";
const RATE = "discount-rate-real";
const ESCALATION = "price-escalation-real";
export const FINANCE_IDS = [LIFE, RATE, ESCALATION] as const;

export type CaseFinance = {
  /** At stated values: what the tables and the workbook recompute. */
  plan: CashFlowPlan;
  figures: ProjectFigures;
  years: CashFlowYear[];
  discountedPaybackYears: number | null;
  ranges: ProjectRanges;
  /** Net present value with the discount rate or the rise of prices at its ends: chosen, not drawn. */
  policy: { label: string; lowTotal: number; highTotal: number }[];
  used: CaseAssumption[];
};

type Given = Pick<CaseInput, "saving" | "savingDraws" | "lifeDraws" | "terms" | "assumptions">;

/**
 * Finance of a case in constant prices with a real discount rate (NIST Handbook 135). The saving's draws are those of
 * the assessment, and so are those of the life: a low saving and a short life of one draw belong together. Rate and rise of prices are a policy and are not drawn.
 */
export function caseFinance({ saving, savingDraws, lifeDraws, terms, assumptions }: Given): CaseFinance {
  const [life, rate, escalation] = FINANCE_IDS.map((id) => assumptionOf(assumptions, id)) as [
    CaseAssumption,
    CaseAssumption,
    CaseAssumption,
  ];
  const plan: CashFlowPlan = {
    basis: "real",
    outlay: terms.outlay.reduce((sum, each) => sum + each.amount, 0),
    savingPerYear: saving.stated,
    upkeepPerYear: 0,
    lifeYears: life.value,
    rate: rate.value,
    escalation: escalation.value,
    timing: terms.timing,
  };
  const years = cashFlowByYear(plan);
  const valueWith = (change: Partial<CashFlowPlan>): number => projectFigures({ ...plan, ...change }).netPresentValue;
  return {
    plan,
    figures: projectFigures(plan),
    years,
    discountedPaybackYears: discountedPaybackYears(years),
    ranges: projectRanges({
      plan,
      savingPerYear: Float64Array.from(savingDraws),
      lifeYears: Float64Array.from(lifeDraws),
    }),
    policy: [
      lineOf(life.label, valueWith({ lifeYears: life.low }), valueWith({ lifeYears: life.high })),
      lineOf(rate.label, valueWith({ rate: rate.low }), valueWith({ rate: rate.high })),
      lineOf(escalation.label, valueWith({ escalation: escalation.low }), valueWith({ escalation: escalation.high })),
    ],
    used: [life, rate, escalation],
  };
}

const lineOf = (label: string, lowTotal: number, highTotal: number) => ({ label, lowTotal, highTotal });

function assumptionOf(assumptions: readonly CaseAssumption[], id: string): CaseAssumption {
  const found = assumptions.find((each) => each.id === id);
  if (!found) throw new Error(`the case was frozen without the assumption "${id}"`);
  return found;
}
