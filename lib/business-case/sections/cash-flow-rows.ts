import type { CashFlowYear } from "@/lib/finance/cash-flow";
import { allocateRounded } from "@/lib/money/allocate";
import { currencyDecimals } from "@/lib/money/money";
import { type CaseValue, money, number, text } from "../case-document";

/** The years of a cash flow as printed: remainders of rounding are handed out, so that the columns add up to the minor unit. */
export function cashFlowRows(years: readonly CashFlowYear[], currency: string): CaseValue[][] {
  const minor = 10 ** currencyDecimals(currency);
  const printed = (of: (each: CashFlowYear) => number): number[] =>
    allocateRounded(years.map((each) => of(each) * minor)).map((each) => each / minor);
  const outlays = printed(({ outlay }) => outlay);
  const savings = printed(({ saving }) => saving);
  const nets = years.map((_, at) => (savings[at] as number) - (outlays[at] as number));
  const present = printed(({ presentValue }) => presentValue);
  const soFar = (values: readonly number[], at: number): number =>
    values.slice(0, at + 1).reduce((sum, each) => sum + each, 0);
  const cents = (amount: number): CaseValue => money(Math.round(amount * minor) / minor, "minor");
  return years.map((each, at) => [
    text(each.inForce > 0 && each.inForce < 1 ? `${each.year} (${each.inForce.toFixed(2)})` : `${each.year}`),
    cents(outlays[at] as number),
    cents(savings[at] as number),
    cents(nets[at] as number),
    cents(soFar(nets, at)),
    number(each.presentFactor, 5),
    cents(present[at] as number),
    cents(soFar(present, at)),
  ]);
}
