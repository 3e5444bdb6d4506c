import { formatFigure } from "@/app/_components/quantity/format-figure";
import styles from "./chart.module.css";

export type SettingBar = {
  key: string;
  label: string;
  powerW: number;
  /** Interval of the power, when it is known. */
  lowW?: number;
  highW?: number;
  /** Such as "as found" or the number of readings. */
  note?: string;
  /** Stands out: the setting in use. */
  current?: boolean;
};

type Props = {
  label: string;
  settings: readonly SettingBar[];
  /** End of the scale in W; the largest value unless said. Give the same to devices that are compared. */
  maxW?: number;
};

/** Settings of a device side by side by power. Pure, so that it can follow what is being typed. */
export function SettingsComparison({ label, settings, maxW }: Props) {
  const end = maxW ?? Math.max(1, ...settings.map((each) => Math.max(each.powerW, each.highW ?? 0)));
  const at = (powerW: number): string => `${Math.min(100, Math.max(0, (powerW / end) * 100))}%`;
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
            <rect
              className={setting.current ? styles.barToneCurrent : styles.barTone}
              x="0"
              y="2"
              width={at(setting.powerW)}
              height="12"
            />
            {setting.lowW !== undefined && setting.highW !== undefined ? (
              <line className={styles.interval} x1={at(setting.lowW)} x2={at(setting.highW)} y1="8" y2="8" />
            ) : null}
          </svg>
          <span className={styles.comparisonValue}>
            {formatFigure(setting.powerW, { decimals: 0 })}
            {"\u2009W"}
            {setting.lowW !== undefined && setting.highW !== undefined ? (
              <span className={styles.comparisonNote}>
                {` (${formatFigure(setting.lowW, { decimals: 0 })}\u2013${formatFigure(setting.highW, { decimals: 0 })})`}
              </span>
            ) : null}
          </span>
        </li>
      ))}
    </ul>
  );
}
