import { currencyDecimals, type Money } from "@/lib/money/money";
import type { Range80 } from "@/lib/working/working";
import { formatFigure } from "./format-figure";
import styles from "./quantity.module.css";
import { Range } from "./range";

/** Sign of a currency as the reader knows it, or its code and a space. */
export function currencySign(currency: string): string {
  const parts = new Intl.NumberFormat("en", { style: "currency", currency }).formatToParts(1);
  const sign = parts.find((part) => part.type === "currency")?.value ?? currency;
  return /[A-Za-z]$/.test(sign) ? `${sign}\u202f` : sign;
}

/** An amount in words of figures. `whole` leaves out the minor units, for sums that are not bills. */
export function moneyWords({ minorUnits, currency }: Money, { whole = false }: { whole?: boolean } = {}): string {
  const decimals = currencyDecimals(currency);
  const digits = formatFigure(Math.abs(minorUnits) / 10 ** decimals, { decimals: whole ? 0 : decimals });
  const negative = minorUnits < 0 && /[1-9]/.test(digits);
  return `${negative ? "\u2212" : ""}${currencySign(currency)}${digits}`;
}

type Props = { money: Money; whole?: boolean; per?: string };

export function MoneyFigure({ money, whole = false, per }: Props) {
  return (
    <span className={styles.figure}>
      {moneyWords(money, { whole })}
      {per ? <span className={styles.unit}> {per}</span> : null}
    </span>
  );
}

type RangeProps = {
  /** In minor units of the currency. */
  minorUnits: Range80;
  currency: string;
  per?: string;
  headline?: boolean;
};

/** A range of money, rounded to what its width allows. */
export function MoneyRange({ minorUnits, currency, per, headline }: RangeProps) {
  const scale = 10 ** currencyDecimals(currency);
  const range = { p10: minorUnits.p10 / scale, p50: minorUnits.p50 / scale, p90: minorUnits.p90 / scale };
  return <Range range={range} unit="" prefix={currencySign(currency)} per={per} headline={headline} />;
}
