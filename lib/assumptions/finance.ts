import type { Assumption } from "./assumption";
import { entry, judgement } from "./entry";

/** What years ahead are worth. Both are real: constant prices, without inflation. */
export const FINANCE_ASSUMPTIONS: readonly Assumption[] = [
  entry({
    id: "discount-rate-real",
    label: "discount rate without inflation",
    value: 0.03,
    low: 0.02,
    high: 0.07,
    unit: "per year",
    source: {
      title: "NIST Handbook 135, rate for federal energy projects 3.0 % real",
      place:
        "low end OMB Circular A-94 as revised in 2023 (2 % real), high end the same circular of 1992 (7 %); the UK Green Book takes 3.5 %. Take your finance department's own",
      confidence: "from-memory",
    },
    appliesTo: "net present value and savings-to-investment ratio of a business case",
  }),
  entry({
    id: "price-escalation-real",
    label: "rise of energy prices above inflation",
    value: 0,
    low: -0.01,
    high: 0.02,
    unit: "per year",
    source: judgement("constant prices unless your contract or your finance department says otherwise"),
    appliesTo: "savings of later years of a business case",
  }),
];
