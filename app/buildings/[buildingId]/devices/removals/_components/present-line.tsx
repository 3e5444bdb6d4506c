import type { Step } from "../view-model";
import styles from "./present-line.module.css";

/** Devices in the building over time, as steps on one scale for all zones. The table beside it has the numbers. */
export function PresentLine({ steps, most, label }: { steps: readonly Step[]; most: number; label: string }) {
  const y = (present: number): number => 22 - (18 * present) / Math.max(1, most);
  return (
    <svg className={styles.line} width="200" height="24" role="img" aria-label={label}>
      <line className={styles.zero} x1="0" x2="100%" y1="22.5" y2="22.5" />
      {steps.map((step, index) => {
        const before = steps[index - 1]?.present ?? 0;
        const x = `${step.fromPct}%`;
        return (
          <g key={`${step.fromPct}-${step.present}`}>
            <line x1={x} x2={x} y1={y(before)} y2={y(step.present)} />
            <line x1={x} x2={`${step.toPct}%`} y1={y(step.present)} y2={y(step.present)} />
          </g>
        );
      })}
    </svg>
  );
}
