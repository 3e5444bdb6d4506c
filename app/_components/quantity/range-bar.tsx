import type { Range80 } from "@/lib/working/working";
import { prefixed, rangeFigures, rangeWords } from "./format-figure";
import styles from "./range-bar.module.css";

type Props = {
  /** What the range is of; read by screen readers before the figures. */
  label: string;
  range: Range80;
  unit: string;
  per?: string;
  prefix?: string;
  /** Ends of the scale; give the same to bars that are compared. */
  scale: { min: number; max: number };
  /** Leaves out the figures, where a table row already has them. */
  bare?: boolean;
};

/** P10 to P90 as a bar with the P50 as its mark, on a stated scale. */
export function RangeBar({ label, range, unit, per, prefix = "", scale, bare = false }: Props) {
  const figures = rangeFigures(range);
  const at = (value: number): number => {
    const share = (value - scale.min) / (scale.max - scale.min || 1);
    return Math.round(Math.min(1, Math.max(0, share)) * 1000) / 10;
  };
  const low = at(range.p10);
  const high = at(range.p90);
  const middle = at(range.p50);
  const axis = bare ? 8 : 32;
  return (
    <div className={bare ? styles.bare : styles.bar}>
      <svg
        className={styles.picture}
        width="100%"
        height={bare ? 16 : 44}
        role="img"
        aria-label={`${label}: ${rangeWords(range, { unit, per, prefix })} (80 % range)`}
      >
        <line className={styles.axis} x1="0" x2="100%" y1={axis} y2={axis} />
        <rect className={styles.span} x={`${low}%`} width={`${Math.max(0.5, high - low)}%`} y={axis - 5} height="10" />
        <line className={styles.middle} x1={`${middle}%`} x2={`${middle}%`} y1={axis - 8} y2={axis + 8} />
        {bare ? null : (
          <>
            <text className={styles.figure} x={`${low}%`} y={axis + 5} dx="-6" textAnchor="end">
              {prefixed(figures.low, prefix)}
            </text>
            <text className={styles.figure} x={`${high}%`} y={axis + 5} dx="6">
              {prefixed(figures.high, prefix)}
            </text>
            <text className={styles.figureMiddle} x={`${middle}%`} y={axis - 14} textAnchor="middle">
              {prefixed(figures.middle, prefix)}
            </text>
          </>
        )}
      </svg>
    </div>
  );
}
