import { formatFigure } from "@/app/_components/quantity/format-figure";
import type { CaseFinance } from "@/lib/business-case/case-finance";
import type { OpenRange80 } from "@/lib/finance/project-ranges";
import { formatMoney } from "@/lib/money/format";
import { moneyFromAmount } from "@/lib/money/money";
import type { Working } from "@/lib/working/working";

/** Simple payback in words: never hides that it may not come. */
export function paybackWords({ p10, p50, p90 }: OpenRange80): string {
  if (p10 === null || p50 === null) return "not paid back in half of the draws or more";
  const figure = (years: number): string => formatFigure(years, { decimals: 1 });
  if (p90 === null) return `${figure(p10)} years or more, most likely ${figure(p50)}; in one draw of ten never`;
  if (figure(p90) === figure(p10)) return `${figure(p50)} years`;
  return `${figure(p10)}–${figure(p90)} years, most likely ${figure(p50)}`;
}

/** Finance of the case in a few lines. */
export function financeItems({ plan, ranges, figures }: CaseFinance): { term: string; value: string }[] {
  const ratio = ranges.savingsToInvestment;
  return [
    { term: "Simple payback", value: paybackWords(ranges.simplePaybackYears) },
    {
      term: "Savings-to-investment ratio",
      value:
        ratio === null || figures.savingsToInvestment === null
          ? "none without an outlay"
          : `${formatFigure(ratio.p10, { decimals: 1 })} to ${formatFigure(ratio.p90, { decimals: 1 })}, at stated values ${formatFigure(figures.savingsToInvestment, { decimals: 2 })}`,
    },
    {
      term: "Basis",
      value: `constant prices, ${formatFigure(plan.rate * 100, { decimals: 1 })}\u00a0% a year real, life ${formatFigure(plan.lifeYears)} years`,
    },
    {
      term: "Chance that it costs more than it brings",
      value: `${formatFigure(ranges.lossShare * 100, { decimals: 0 })}\u00a0% of the draws`,
    },
  ];
}

/** "Net present value: −$248.32", as its working ends. */
export function statedWords(title: string, { result }: Working, currency: string): string {
  if (result.unit === currency) return `${title}: ${formatMoney(moneyFromAmount(result.value, currency))}`;
  const figure = formatFigure(result.value, { decimals: 2 });
  return `${title}: ${figure}${result.unit === "" ? "" : `\u00a0${result.unit}`}`;
}
