import { formatNumber } from "@/lib/units/format";
import type { CircuitPicture } from "../view-model";
import styles from "./circuit-picture.module.css";

const TONES = 5;

/** Amperes of a circuit stacked up against its continuous limit and its rating. A table or list beside it has the numbers. */
export function CircuitBar({ picture, label }: { picture: CircuitPicture; label: string }) {
  const { parts, totalA, ratingA, limitA, endA } = picture;
  const at = (currentA: number): string => `${(100 * currentA) / endA}%`;
  let fromA = 0;
  let device = 0;
  const shown = parts.map((part) => {
    const start = fromA;
    fromA += part.currentA;
    return { ...part, start, tone: part.base ? "base" : `tone${device++ % TONES}` };
  });
  return (
    <figure className={styles.figure}>
      <svg className={styles.svg} width="100%" height="64" role="img" aria-label={label}>
        {shown.map(({ key, start, currentA, tone }) => (
          <rect key={key} className={styles[tone]} x={at(start)} width={at(currentA)} y="24" height="20" />
        ))}
        {shown.map(({ key, start }) =>
          start > 0 ? <line key={key} className={styles.gap} x1={at(start)} x2={at(start)} y1="24" y2="44" /> : null,
        )}
        <line className={styles.base0} x1="0" x2="100%" y1="44.5" y2="44.5" />
        {limitA !== null && limitA !== ratingA ? (
          <g>
            <line className={styles.limit} x1={at(limitA)} x2={at(limitA)} y1="18" y2="50" />
            <text className={styles.mark} x={at(limitA)} dx="-4" y="14" textAnchor="end">
              {`continuous ${formatNumber(limitA, { decimals: 1 })} A`}
            </text>
          </g>
        ) : null}
        {ratingA !== null ? (
          <g>
            <line className={styles.rating} x1={at(ratingA)} x2={at(ratingA)} y1="4" y2="50" />
            <text className={styles.mark} x={at(ratingA)} dx="-4" y="62" textAnchor="end">
              {`rating ${formatNumber(ratingA, { decimals: 0 })} A`}
            </text>
          </g>
        ) : null}
      </svg>
      <figcaption className={styles.caption}>
        {shown.length === 0 ? "Nothing is known to hang on it." : null}
        {shown.map(({ key, label: name, currentA, tone, continuous }) => (
          <span key={key} className={styles.entry}>
            <span className={`${styles.swatch} ${styles[`fill-${tone}`]}`} aria-hidden="true" />
            {`${name} ${formatNumber(currentA, { decimals: 1 })}\u2009A${continuous ? "" : " (under 3 h)"}`}
          </span>
        ))}
        {shown.length > 1 ? (
          <span className={styles.total}>{`together ${formatNumber(totalA, { decimals: 1 })}\u2009A`}</span>
        ) : null}
      </figcaption>
    </figure>
  );
}
