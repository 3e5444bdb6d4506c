import { allocateRounded } from "@/lib/money/allocate";
import { currencyDecimals } from "@/lib/money/money";
import type { Working } from "@/lib/working/working";
import { type Digits, formatFigure } from "./format-figure";

/** Digits of the values of a working: with them a pocket calculator ends at the printed cent of some thousands. */
const SIGNIFICANT = 7;

/** Money in a working has its unit as `USD a year`, or `USD` at once. */
const currencyOf = (unit: string): string | null => /^([A-Z]{3})(?: a year)?$/.exec(unit)?.[1] ?? null;

/** How a value of a working is written: money to its minor unit, all else to seven digits at most. */
export function workingDigits(unit: string): Digits {
  const currency = currencyOf(unit);
  return currency ? { decimals: currencyDecimals(currency) } : { significant: SIGNIFICANT };
}

/** Printed values of the terms, in their order. Terms of a sum of money add up to the printed result, to the cent. */
export function termFigures({ formula, terms, result }: Working): string[] {
  const currency = currencyOf(result.unit);
  const isSum = / = sum of /.test(formula) && terms.every((term) => term.unit === result.unit);
  if (!currency || !isSum) return terms.map((term) => formatFigure(term.value, workingDigits(term.unit)));
  const minor = 10 ** currencyDecimals(currency);
  return allocateRounded(
    terms.map((term) => term.value * minor),
    result.value * minor,
  ).map((each) => formatFigure(each / minor, workingDigits(result.unit)));
}
