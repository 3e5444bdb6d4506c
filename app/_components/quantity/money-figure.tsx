import { formatMoney } from "@/lib/money/format";
import { currencyDecimals, type Money } from "@/lib/money/money";
import type { Range80 } from "@/lib/working/working";
import styles from "./quantity.module.css";
import { Range } from "./range";

/** Sign of a currency as the reader knows it, or its code and a space. */
export function currencySign(currency: string): string {
  const parts = new Intl.NumberFormat("en", { style: "currency", currency }).formatToParts(1);
  const sign = parts.find((part) => part.type === "currency")?.value ?? currency;
  return /[A-Za-z]$/.test(sign) ? `${sign}\u202f` : sign;
}

type Props = {
  money: Money;
  /** Leaves out the minor units, for sums that are not bills. */
  whole?: boolean;
  per?: string;
};

/** One amount, kept on one line. */

export function MoneyFigure({ money, whole = false, per }: Props) {
  return (
    <span className={styles.figure}>
      {formatMoney(money, { whole })}
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
