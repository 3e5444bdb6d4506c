import { formatFigure, rangeFigures, rangeWords, spanWords } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import type { CaseValue } from "@/lib/business-case/case-document";
import { formatMoney } from "@/lib/money/format";
import { moneyFromAmount } from "@/lib/money/money";

/** A value in words and figures. In a table a range has its middle behind it, in brackets. */
export function valueWords(value: CaseValue, currency: string, place: "text" | "table" = "text"): string {
  switch (value.kind) {
    case "text":
      return value.text;
    case "money":
      return formatMoney(moneyFromAmount(value.amount, currency), { whole: value.decimals === "whole" });
    case "number": {
      const figure = formatFigure(value.value, { decimals: value.decimals });
      return value.unit === "" ? figure : `${figure}\u00a0${value.unit}`;
    }
    case "money-range":
    case "range": {
      const prefix = value.kind === "money-range" ? currencySign(currency) : "";
      const unit = value.kind === "range" ? value.unit : "";
      if (place === "text") return rangeWords(value.range, { prefix, unit });
      const { low, middle, high } = rangeFigures(value.range);
      return `${spanWords(low, high, prefix)} (${middle})${unit ? `\u00a0${unit}` : ""}`;
    }
  }
}
