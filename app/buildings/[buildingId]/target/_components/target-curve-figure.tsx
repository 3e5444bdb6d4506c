import { type CurvePicture, FRAME } from "../view-model";
import styles from "./target-curve-figure.module.css";

type Props = { label: string; picture: CurvePicture };

const END = FRAME.width - FRAME.right;

/** Cost with its range over the target, and under it the shares of people who would want it warmer and cooler. */
export function TargetCurveFigure({ label, picture }: Props) {
  const { cost, votes } = FRAME;
  return (
    <figure className={styles.figure}>
      <svg className={styles.svg} viewBox={`0 0 ${FRAME.width} ${votes.bottom + 40}`} role="img" aria-label={label}>
        <text x={FRAME.left} y={12} className={styles.soft}>
          Cost a year: most likely, and P10 to P90
        </text>
        {picture.costTicks.map((tick) => (
          <g key={tick.label}>
            <line className={styles.hairline} x1={FRAME.left} x2={END} y1={tick.y} y2={tick.y} />
            <text className={styles.soft} x={FRAME.left - 8} y={tick.y + 4} textAnchor="end">
              {tick.label}
            </text>
          </g>
        ))}
        <path className={styles.band} d={picture.band} />
        <path className={styles.middle} d={picture.middle} />
        <text x={FRAME.left} y={votes.top - 14} className={styles.soft}>
          Would want it warmer or cooler, in field votes
        </text>
        {picture.voteTicks.map((tick) => (
          <g key={tick.label}>
            <line className={styles.hairline} x1={FRAME.left} x2={END} y1={tick.y} y2={tick.y} />
            <text className={styles.soft} x={FRAME.left - 8} y={tick.y + 4} textAnchor="end">
              {tick.label}
            </text>
          </g>
        ))}
        <path className={styles.cold} d={picture.warmer} />
        <path className={styles.warm} d={picture.cooler} />
        <text x={picture.ends.x + 8} y={picture.ends.middle + 4}>
          most likely
        </text>
        <text x={picture.ends.x + 8} y={picture.ends.warmer + 4}>
          warmer
        </text>
        <text x={picture.ends.x + 8} y={picture.ends.cooler + 4}>
          cooler
        </text>
        {picture.ticks.map((tick) => (
          <g key={tick.label}>
            {tick.isTarget ? (
              <line className={styles.target} x1={tick.x} x2={tick.x} y1={cost.top} y2={votes.bottom} />
            ) : null}
            <text
              className={tick.isTarget ? styles.strong : undefined}
              x={tick.x}
              y={votes.bottom + 20}
              textAnchor="middle"
            >
              {tick.label}
            </text>
          </g>
        ))}
      </svg>
    </figure>
  );
}
