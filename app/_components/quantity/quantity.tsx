import { type Digits, formatFigure } from "./format-figure";
import styles from "./quantity.module.css";

type Props = {
  value: number;
  /** "" for a pure number, and where a table's heading names the unit. */
  unit: string;
  digits?: Digits;
};

/** One figure and its unit, kept on one line. */
export function Quantity({ value, unit, digits }: Props) {
  return (
    <span className={styles.quantity}>
      {formatFigure(value, digits)}
      {unit ? (
        <>
          {unit === "%" ? "\u202f" : "\u2009"}
          <span className={styles.unit}>{unit}</span>
        </>
      ) : null}
    </span>
  );
}

/** Stands where there is no figure: says why in a word or two, and names the missing reading if it can. */
export function NoFigure({ reason }: { reason: string }) {
  return <span className={styles.none}>{reason}</span>;
}
