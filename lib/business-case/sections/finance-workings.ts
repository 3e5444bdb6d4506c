import type { Term, Working } from "@/lib/working/working";
import type { CaseFinance } from "../case-finance";

const HANDBOOK = "NIST Handbook 135";

/** Workings of payback, net present value and ratio at stated values. */
export function financeWorkings(
  { plan, figures, years, used }: CaseFinance,
  currency: string,
): { title: string; working: Working }[] {
  const outlay: Term = { symbol: "I_0", label: "outlay", value: plan.outlay, unit: currency, origin: "entered" };
  const saving: Term = {
    symbol: "A",
    label: "saving in the first year",
    value: plan.savingPerYear,
    unit: `${currency} a year`,
    origin: "computed",
  };
  const [life, rate, escalation] = used.map(
    (each, at): Term => ({
      symbol: ["n", "d", "e"][at] as string,
      label: each.label,
      value: each.value,
      low: each.low,
      high: each.high,
      unit: each.unit,
      origin: each.origin,
      source: each.source,
      assumptionId: each.id,
    }),
  ) as [Term, Term, Term];
  const present: Term = {
    symbol: "P",
    label: "present value of the savings",
    value: figures.presentSavings,
    unit: currency,
    origin: "computed",
    working: {
      formula: "P = A * sum over k of (1 + e)^k * f_k * v_k",
      terms: [
        saving,
        life,
        rate,
        escalation,
        ...years.slice(1).flatMap((each): Term[] => [
          {
            symbol: `f_${each.year}`,
            label: `share of year ${each.year} in force`,
            value: each.inForce,
            unit: "",
            origin: "computed",
          },
          {
            symbol: `v_${each.year}`,
            label: `present factor of year ${each.year}`,
            value: each.presentFactor,
            unit: "",
            origin: "computed",
          },
        ]),
      ],
      result: {
        symbol: "P",
        label: "present value of the savings",
        value: figures.presentSavings,
        unit: currency,
      },
      notes: [`v_k = (1 + d)^(-t), with t the ${plan.timing} of year k.`],
      source: HANDBOOK,
    },
  };
  const result = (symbol: string, label: string, value: number, unit: string) => ({ symbol, label, value, unit });
  const workings = [
    {
      title: "Net present value",
      working: {
        formula: "NPV = P - I_0",
        terms: [present, outlay],
        result: result("NPV", "net present value", figures.netPresentValue, currency),
        source: HANDBOOK,
      },
    },
  ];
  if (figures.simplePaybackYears !== null && plan.outlay > 0)
    workings.unshift({
      title: "Simple payback",
      working: {
        formula: "SPB = I_0 / A",
        terms: [outlay, saving],
        result: result("SPB", "simple payback", figures.simplePaybackYears, "years"),
        source: HANDBOOK,
      },
    });
  if (figures.savingsToInvestment !== null)
    workings.push({
      title: "Savings-to-investment ratio",
      working: {
        formula: "SIR = P / I_0",
        terms: [{ ...present, working: undefined }, outlay],
        result: result("SIR", "savings-to-investment ratio", figures.savingsToInvestment, ""),
        source: HANDBOOK,
      },
    });
  return workings;
}
