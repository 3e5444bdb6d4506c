import { singlePresentValue, type Timing } from "./present-value";

/**
 * What a change costs and brings, year by year. Money in major units. `real`: constant prices, a discount rate without
 * inflation and escalation above inflation; `nominal`: prices of the day, with inflation in both. Never one of each.
 */
export type CashFlowPlan = {
  basis: "real" | "nominal";
  /** Laid out at the start of year 1. */
  outlay: number;
  /** Saved in a whole year at today's prices. */
  savingPerYear: number;
  /** Spent in a whole year at today's prices to keep the change in force. */
  upkeepPerYear: number;
  /** Years for which the change lasts; of a part of a year that part counts. */
  lifeYears: number;
  /** Discount rate, a fraction a year. */
  rate: number;
  /** Rise of the price of the saving, a fraction a year, from the first year on (NIST Handbook 135: UPV*). */
  escalation: number;
  timing: Timing;
};

export type CashFlowYear = {
  /** 0 is the start. */
  year: number;
  /** Part of the year in which the change is in force. */
  inForce: number;
  outlay: number;
  saving: number;
  upkeep: number;
  net: number;
  cumulative: number;
  /** What 1 of this year is worth now. */
  presentFactor: number;
  presentValue: number;
  presentCumulative: number;
};

/** Cash flows from the start to the last year of the change's life; the last `presentCumulative` is the net present value. */
export function cashFlowByYear(plan: CashFlowPlan): CashFlowYear[] {
  const years: CashFlowYear[] = [];
  let [cumulative, presentCumulative] = [0, 0];
  for (let year = 0; year <= Math.ceil(plan.lifeYears); year++) {
    const inForce = year === 0 ? 0 : Math.min(1, plan.lifeYears - (year - 1));
    const outlay = year === 0 ? plan.outlay : 0;
    const saving = plan.savingPerYear * (1 + plan.escalation) ** year * inForce;
    const upkeep = plan.upkeepPerYear * inForce;
    const net = saving - upkeep - outlay;
    const presentFactor = year === 0 ? 1 : singlePresentValue(plan.rate, year, plan.timing);
    const presentValue = net * presentFactor;
    cumulative += net;
    presentCumulative += presentValue;
    years.push({
      year,
      inForce,
      outlay,
      saving,
      upkeep,
      net,
      cumulative,
      presentFactor,
      presentValue,
      presentCumulative,
    });
  }
  return years;
}

/** Years until the discounted flows have paid the outlay, straight within a year; null where they never do. */
export function discountedPaybackYears(years: readonly CashFlowYear[]): number | null {
  for (const [at, each] of years.entries()) {
    if (each.presentCumulative < 0) continue;
    const before = years[at - 1]?.presentCumulative ?? 0;
    return before >= 0 ? each.year : each.year - 1 + -before / (each.presentCumulative - before);
  }
  return null;
}
