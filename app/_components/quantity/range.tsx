import type { Range80 } from "@/lib/working/working";
import { prefixed, rangeFigures, spanWords } from "./format-figure";
import styles from "./quantity.module.css";

type Props = {
  range: Range80;
  unit: string;
  /** Such as "a year". */
  per?: string;
  /** Stands before each figure, such as a currency sign. */
  prefix?: string;
  /** Sets "most likely" smaller, for a headline. */
  headline?: boolean;
};

/** A range written as a range: the 80 % span, then the most likely figure. */
export function Range({ range, unit, per = "", prefix = "", headline = false }: Props) {
  const { low, middle, high } = rangeFigures(range);
  return (
    <span>
      <span className={styles.figure}>{spanWords(low, high, prefix)}</span>
      {unit ? <span className={styles.unit}>{`\u2009${unit}`}</span> : null}
      {per ? <span className={styles.unit}> {per}</span> : null}
      <span className={styles.unit}>,</span>{" "}
      <span className={headline ? styles.likely : styles.unit}>
        most likely <span className={styles.figure}>{prefixed(middle, prefix)}</span>
      </span>
    </span>
  );
}
