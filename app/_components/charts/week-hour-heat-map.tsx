import { DataTable } from "@/app/_components/ui/data-table";
import { formatTemperatureDifference, type TemperatureUnit } from "@/lib/units/format";
import styles from "./chart.module.css";
import { differenceSign } from "./shown-temperature";
import { FULL_COLOR_K, tempDifferenceColor, tempDifferenceInk } from "./temp-difference-color";

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
const ROW_PX = 24;
const HEAD_PX = 20;
/** Share of the width that the names of the days take; the hours share the rest. */
const NAME_PCT = 8;

type Props = {
  /** What is shown, with the zone and the period. */
  label: string;
  /** Mean differences in K, Monday first, 24 hours each; null where nothing was recorded. */
  differencesK: readonly (readonly (number | null)[])[];
  /** What the difference is taken from, such as "the target of 23.0 °C". */
  reference: string;
  /** Readings and scale are in K with °C, in °F with °F. */
  temperatureUnit: TemperatureUnit;
};

/** A week by hours, coloured by temperature difference, with its scale and its table. */
export function WeekHourHeatMap({ label, differencesK, reference, temperatureUnit }: Props) {
  const cellPct = (100 - NAME_PCT) / 24;
  const reading = (differenceK: number): string => formatTemperatureDifference(differenceK, temperatureUnit).value;
  const left = (hour: number): number => NAME_PCT + hour * cellPct;
  return (
    <figure className={styles.figure}>
      <div className={styles.heat}>
        <svg className={styles.svg} width="100%" height={HEAD_PX + DAYS.length * ROW_PX} role="img" aria-label={label}>
          {HOURS.filter((hour) => hour % 6 === 0).map((hour) => (
            <text key={hour} className={styles.soft} x={`${left(hour)}%`} y={14}>
              {String(hour).padStart(2, "0")}:00
            </text>
          ))}
          {DAYS.map((day, row) => (
            <g key={day}>
              <text x="0" y={HEAD_PX + row * ROW_PX + 16}>
                {day}
              </text>
              {HOURS.map((hour) => {
                const difference = differencesK[row]?.[hour] ?? null;
                const y = HEAD_PX + row * ROW_PX;
                const cell = { x: `${left(hour)}%`, y: y + 0.5, width: `${cellPct}%`, height: ROW_PX - 1 };
                if (difference === null) {
                  return (
                    <line
                      key={hour}
                      className={styles.hairline}
                      x1={cell.x}
                      x2={`${left(hour + 1)}%`}
                      y1={y + 12}
                      y2={y + 12}
                    />
                  );
                }
                return (
                  <g key={hour}>
                    <rect {...cell} fill={tempDifferenceColor(difference)} />
                    <text className={styles.reading} x={`${left(hour) + cellPct / 2}%`} y={y + 16}>
                      <tspan fill={tempDifferenceInk(difference)}>{reading(difference)}</tspan>
                    </text>
                  </g>
                );
              })}
            </g>
          ))}
        </svg>
      </div>
      <TempDifferenceScale reference={reference} temperatureUnit={temperatureUnit} />
      <details className={styles.numbers}>
        <summary>The numbers as a table</summary>
        <DataTable
          caption={label}
          captionHidden
          columns={[
            { key: "hour", head: "Hour", names: true, cell: (hour: number) => `${String(hour).padStart(2, "0")}:00` },
            ...DAYS.map((day, row) => ({
              key: day,
              head: day,
              unit: differenceSign(temperatureUnit),
              align: "number" as const,
              cell: (hour: number) => {
                const difference = differencesK[row]?.[hour] ?? null;
                return difference === null ? "no data" : reading(difference);
              },
            })),
          ]}
          rows={HOURS}
          rowKey={(hour) => hour}
        />
      </details>
    </figure>
  );
}

/** Scale of the colour map in words and colours. */
export function TempDifferenceScale({
  reference,
  temperatureUnit,
}: {
  reference: string;
  temperatureUnit: TemperatureUnit;
}) {
  const decimals = temperatureUnit === "F" ? 1 : 0;
  const end = (differenceK: number): string => {
    const { value, unit } = formatTemperatureDifference(differenceK, temperatureUnit, decimals);
    return `${value}\u2009${unit}`;
  };
  const steps = Array.from({ length: 2 * FULL_COLOR_K + 1 }, (_, index) => index - FULL_COLOR_K);
  return (
    <div className={styles.scaleRow}>
      <span>{end(-FULL_COLOR_K)} or colder</span>
      <svg width="180" height="12" aria-hidden="true">
        {steps.map((step, index) => (
          <rect key={step} x={index * 20} width="20" height="12" fill={tempDifferenceColor(step)} />
        ))}
      </svg>
      <span>{`+${end(FULL_COLOR_K)} or warmer, from ${reference}`}</span>
    </div>
  );
}
