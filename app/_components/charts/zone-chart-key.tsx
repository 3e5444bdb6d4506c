import type { ReactNode } from "react";
import type { OccupiedState } from "@/lib/trends/zone-state";
import styles from "./chart.module.css";
import type { ZoneSeries } from "./zone-series";

const STATE_CLASS: Record<OccupiedState, string | undefined> = {
  cooling: styles.stateCooling,
  reheat: styles.stateReheat,
  deadband: styles.stateDeadband,
  undetermined: styles.stateUndetermined,
  fault: styles.stateFault,
};

const STATES = Object.keys(STATE_CLASS) as OccupiedState[];

/** Key of the marks that cannot be named beside themselves; only those that occur. */
export function ZoneChartKey({ series }: { series: ZoneSeries }) {
  const occurring = new Set(series.states?.map(({ state }) => state));
  return (
    <ul className={styles.key}>
      {series.comfortBand?.length ? (
        <Entry text="comfort range">
          <rect className={styles.comfort} x="0.5" y="0.5" width="19" height="9" />
        </Entry>
      ) : null}
      {STATES.filter((state) => occurring.has(state)).map((state) => (
        <Entry key={state} text={state}>
          {state === "fault" ? (
            <path className={styles.stateFault} d="M0 10L10 0M5 10L15 0M10 10L20 0" />
          ) : (
            <rect className={STATE_CLASS[state]} x="0.5" y="0.5" width="19" height="9" />
          )}
        </Entry>
      ))}
      {series.heaters?.length ? (
        <Entry text="heater found in use">
          <path className={styles.ink} strokeWidth="2" d="M4 10V0M12 10V0" />
        </Entry>
      ) : null}
      {series.reports?.length ? (
        <Entry text="report: − cold, + warm, larger the stronger">
          <path className={styles.cold} d="M1 5a4 4 0 1 0 8 0a4 4 0 1 0 -8 0M3 5h4" />
          <path className={styles.warm} d="M11 5a4 4 0 1 0 8 0a4 4 0 1 0 -8 0M13 5h4M15 3v4" />
        </Entry>
      ) : null}
    </ul>
  );
}

function Entry({ text, children }: { text: string; children: ReactNode }) {
  return (
    <li>
      <svg className={styles.swatch} viewBox="0 0 20 10" aria-hidden="true">
        {children}
      </svg>
      {text}
    </li>
  );
}
