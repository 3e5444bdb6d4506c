import { formatFigure } from "@/app/_components/quantity/format-figure";
import styles from "./chart.module.css";

export type SettingBar = {
  key: string;
  label: string;
  value: number;
  /** Interval of the value, when it is known. */
  low?: number;
  high?: number;
  /** Such as "at most" or the number of readings. */
  note?: string;
  /** Stands after the figure: what it costs. */
  after?: string;
};

type Props = {
  label: string;
  unit: string;
  settings: readonly SettingBar[];
  decimals?: number;
  /** End of the scale; the largest value unless said. Give the same to devices that are compared. */
  end?: number;
};

/** Settings of a device side by side by one quantity. Pure, so that it can follow what is being typed. */
export function SettingsComparison({ label, unit, settings, decimals = 0, end: given }: Props) {
  const end = given ?? Math.max(1e-9, ...settings.map((each) => Math.max(each.value, each.high ?? 0)));
  const at = (value: number): string => `${Math.min(100, Math.max(0, (value / end) * 100))}%`;
  return (
    <ul className={`${styles.comparison} ${styles.plainList}`} aria-label={label}>
      {settings.map((setting) => (
        <li key={setting.key} className={styles.comparisonRow}>
          <span>
            {setting.label}
            {setting.note ? <span className={styles.comparisonNote}> {setting.note}</span> : null}
          </span>
          <svg className={styles.svg} width="100%" height="16" aria-hidden="true">
            <line className={styles.hairline} x1="0" x2="100%" y1="15.5" y2="15.5" />
            <rect className={styles.barTone} x="0" y="2" width={at(setting.value)} height="12" />
            {setting.low !== undefined && setting.high !== undefined ? (
              <line className={styles.interval} x1={at(setting.low)} x2={at(setting.high)} y1="8" y2="8" />
            ) : null}
          </svg>
          <span className={styles.comparisonValue}>
            {formatFigure(setting.value, { decimals })}
            {`\u2009${unit}`}
            {setting.low !== undefined && setting.high !== undefined ? (
              <span className={styles.comparisonNote}>
                {` (${formatFigure(setting.low, { decimals })}\u2013${formatFigure(setting.high, { decimals })})`}
              </span>
            ) : null}
            {setting.after ? <span className={styles.comparisonNote}>{`, ${setting.after}`}</span> : null}
          </span>
        </li>
      ))}
    </ul>
  );
}
