import type { ReactNode } from "react";
import styles from "./coverage-calendar.module.css";
import { BLOCK_DAYS, type CoverageTone, calendarBlocks, toneRuns } from "./coverage-runs";

type Props = {
  /** What is shown, with the zone and the period, and what stands out. */
  label: string;
  /** Day number (days since 1970-01-01) of the first day. */
  firstDay: number;
  /** One row a point: its share of the expected samples by local day. */
  rows: readonly { key: string | number; name: string; shares: readonly number[] }[];
  /** The table of the same numbers. */
  children: ReactNode;
};

const KEY: readonly (readonly [CoverageTone, string])[] = [
  ["complete", "95\u202f% of the samples or more"],
  ["most", "50 to 95\u202f%"],
  ["little", "less than 50\u202f%"],
  ["none", "none"],
];

/** Days by points, quarter by quarter of the year: pale where the record is complete, ink where there is nothing. */
export function CoverageCalendar({ label, firstDay, rows, children }: Props) {
  const dayCount = rows[0]?.shares.length ?? 0;
  return (
    <figure>
      <div className={styles.blocks} role="img" aria-label={label}>
        {calendarBlocks(firstDay, dayCount).map((block) => (
          <div key={block.from}>
            <div className={styles.row}>
              <span />
              <div className={styles.months}>
                {block.months.map((month) => (
                  <span key={month.name} style={{ insetInlineStart: `${(100 * month.at) / BLOCK_DAYS}%` }}>
                    {month.name}
                  </span>
                ))}
              </div>
            </div>
            {rows.map((row) => (
              <div key={row.key} className={styles.row}>
                <span>{row.name}</span>
                <svg
                  className={styles.strip}
                  viewBox={`0 0 ${BLOCK_DAYS} 1`}
                  preserveAspectRatio="none"
                  shapeRendering="crispEdges"
                  aria-hidden="true"
                >
                  {toneRuns(row.shares, block.from, block.to).map((run) => (
                    <rect
                      key={run.from}
                      className={styles[run.tone]}
                      x={block.before + run.from}
                      width={run.days}
                      height="1"
                    />
                  ))}
                </svg>
              </div>
            ))}
          </div>
        ))}
      </div>
      <ul className={styles.key}>
        {KEY.map(([tone, words]) => (
          <li key={tone}>
            <svg width="20" height="10" aria-hidden="true">
              <rect className={styles[tone]} width="20" height="10" />
            </svg>
            {words}
          </li>
        ))}
      </ul>
      {children}
    </figure>
  );
}
