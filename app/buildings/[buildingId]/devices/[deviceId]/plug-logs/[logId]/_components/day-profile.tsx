import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import { formatNumber } from "@/lib/units/format";
import styles from "./day-profile.module.css";

type Props = {
  profile: { occupiedW: readonly (number | null)[]; otherW: readonly (number | null)[] };
  label: string;
};

const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
const PLOT = { width: 720, height: 180, left: 56, bottom: 24, top: 12 };

/** Mean power by hour of the day: bars of occupied days, a stepped line of the others. */
export function DayProfile({ profile, label }: Props) {
  const highest = Math.max(1, ...profile.occupiedW.map((w) => w ?? 0), ...profile.otherW.map((w) => w ?? 0));
  const y = (powerW: number): number => PLOT.top + (1 - powerW / highest) * (PLOT.height - PLOT.top - PLOT.bottom);
  const x = (hour: number): number => PLOT.left + (hour / 24) * (PLOT.width - PLOT.left);
  const base = y(0);
  const width = x(1) - x(0);
  return (
    <figure className={styles.figure}>
      <svg viewBox={`0 0 ${PLOT.width} ${PLOT.height}`} role="img" aria-label={label}>
        {[0, highest / 2, highest].map((powerW) => (
          <g key={powerW}>
            <line className={styles.rule} x1={PLOT.left} x2={PLOT.width} y1={y(powerW)} y2={y(powerW)} />
            <text className={styles.tick} x={PLOT.left - 6} y={y(powerW) + 4} textAnchor="end">
              {formatNumber(powerW, { decimals: highest < 10 ? 1 : 0 })}
              {powerW === highest ? " W" : ""}
            </text>
          </g>
        ))}
        {HOURS.map((hour) => {
          const powerW = profile.occupiedW[hour];
          return powerW == null ? null : (
            <rect
              key={hour}
              className={styles.occupied}
              x={x(hour) + 1}
              width={width - 2}
              y={y(powerW)}
              height={base - y(powerW)}
            />
          );
        })}
        {HOURS.map((hour) => {
          const powerW = profile.otherW[hour];
          return powerW == null ? null : (
            <line key={hour} className={styles.other} x1={x(hour)} x2={x(hour + 1)} y1={y(powerW)} y2={y(powerW)} />
          );
        })}
        {HOURS.filter((hour) => hour % 6 === 0).map((hour) => (
          <text key={hour} className={styles.tick} x={x(hour)} y={PLOT.height - 6}>
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
