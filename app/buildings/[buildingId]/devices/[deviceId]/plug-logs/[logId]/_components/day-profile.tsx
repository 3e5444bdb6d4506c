import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { formatNumber } from "@/lib/units/format";
import styles from "./day-profile.module.css";

type Props = {
  profile: { occupiedW: readonly (number | null)[]; otherW: readonly (number | null)[] };
  label: string;
};

const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
/** Heights in px; across, in shares of the width, so that the words keep their size on a phone. */
const PLOT = { height: 180, bottom: 24, top: 20, leftPct: 2, rightPct: 98 };

/** Mean power by hour of the day: bars of occupied days, a stepped line of the others. */
export function DayProfile({ profile, label }: Props) {
  const highest = Math.max(1, ...profile.occupiedW.map((w) => w ?? 0), ...profile.otherW.map((w) => w ?? 0));
  const y = (powerW: number): number => PLOT.top + (1 - powerW / highest) * (PLOT.height - PLOT.top - PLOT.bottom);
  const pct = (hour: number): number => PLOT.leftPct + (hour / 24) * (PLOT.rightPct - PLOT.leftPct);
  const width = `${pct(1) - pct(0) - 0.3}%`;
  return (
    <figure className={styles.figure}>
      <svg width="100%" height={PLOT.height} role="img" aria-label={label}>
        {HOURS.map((hour) => {
          const powerW = profile.occupiedW[hour];
          return powerW == null ? null : (
            <rect
              key={hour}
              className={styles.occupied}
              x={`${pct(hour)}%`}
              width={width}
              y={y(powerW)}
              height={y(0) - y(powerW)}
            />
          );
        })}
        {HOURS.map((hour) => {
          const powerW = profile.otherW[hour];
          return powerW == null ? null : (
            <line
              key={hour}
              className={styles.other}
              x1={`${pct(hour)}%`}
              x2={`${pct(hour + 1)}%`}
              y1={y(powerW)}
              y2={y(powerW)}
            />
          );
        })}
        {[0, highest / 2, highest].map((powerW) => (
          <g key={powerW}>
            <line className={styles.rule} x1="0" x2="100%" y1={y(powerW)} y2={y(powerW)} />
            {powerW > 0 ? (
              <text className={styles.tick} x="0" y={y(powerW) - 4}>
                {formatNumber(powerW, { decimals: highest < 10 ? 1 : 0 })} W
              </text>
            ) : null}
          </g>
        ))}
        {HOURS.filter((hour) => hour % 6 === 0).map((hour) => (
          <text key={hour} className={styles.tick} x={`${pct(hour)}%`} y={PLOT.height - 6}>
            {String(hour).padStart(2, "0")}:00
          </text>
        ))}
      </svg>
      <figcaption className={styles.key}>
        <span className={styles.occupiedKey}>occupied days</span>
        {profile.otherW.some((w) => w !== null) ? <span className={styles.otherKey}>other days</span> : null}
      </figcaption>
      <Disclosure summary="Profile as a table">
        <DataTable
          caption={label}
          captionHidden
          rows={HOURS}
          rowKey={(hour) => hour}
          columns={[
            { key: "hour", head: "Hour", names: true, cell: (hour) => `${String(hour).padStart(2, "0")}:00` },
            {
              key: "occupied",
              head: "Occupied days",
              unit: "W",
              align: "number",
              cell: (hour) => watts(profile.occupiedW[hour]),
            },
            {
              key: "other",
              head: "Other days",
              unit: "W",
              align: "number",
              cell: (hour) => watts(profile.otherW[hour]),
            },
          ]}
        />
      </Disclosure>
    </figure>
  );
}

const watts = (powerW: number | null | undefined): string =>
  powerW == null ? "" : formatNumber(powerW, { decimals: 1 });
