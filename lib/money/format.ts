import { amountFromMoney, currencyDecimals, type Money } from "./money";

const NO_BREAK_SPACE = "\u00a0";
const MINUS_SIGN = "\u2212";

/**
 * An amount with its currency sign in English order, commas between groups of three: `$1,280.14`, or `$1,280` when
 * `whole` drops the minor unit (rounded half to even).
 */
export function formatMoney(money: Money, { whole = false }: { whole?: boolean } = {}): string {
  const decimals = whole ? 0 : currencyDecimals(money.currency);
  return printed(amountFromMoney(money), money.currency, { least: decimals, most: decimals });
}

/** A price per unit, to four decimals where it has them: `$0.1275 per kWh`. */
export function formatRate(rate: { amount: number; currency: string; per: string }): string {
  const least = currencyDecimals(rate.currency);
  const amount = printed(rate.amount, rate.currency, { least, most: Math.max(4, least) });
  return `${amount}${NO_BREAK_SPACE}per${NO_BREAK_SPACE}${rate.per}`;
}

function printed(amount: number, currency: string, decimals: { least: number; most: number }): string {
  if (!Number.isFinite(amount)) throw new RangeError("only a finite amount can be printed");
  return new Intl.NumberFormat("en", {
    style: "currency",
    currency,
    useGrouping: true,
    signDisplay: "negative",
    roundingMode: "halfEven",
    minimumFractionDigits: decimals.least,
    maximumFractionDigits: decimals.most,
  })
    .formatToParts(amount)
    .map((part) => (part.type === "minusSign" ? MINUS_SIGN : part.value))
    .join("");
}
