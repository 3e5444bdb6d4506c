import { DataTable } from "@/app/_components/ui/data-table";
import styles from "./chart.module.css";
import { type Part, placeParts } from "./contribution-layout";

type Props = {
  /** What the whole is, such as "Cost of overcooling". */
  label: string;
  /** Not negative, in the order of the sum; at most five. */
  parts: readonly Part[];
  /** A part or the total in words of figures, rounded so that the printed parts add up to the printed total. */
  format: (value: number) => string;
  unit?: string;
};

const LEVEL_PX = 20;
const BAR_PX = 24;
const TONES = 5;

/** One bar whose parts add up to the headline, each named beside itself, with its table. */
export function StackedContribution({ label, parts, format, unit }: Props) {
  const placed = placeParts(parts);
  const total = parts.reduce((sum, part) => sum + part.value, 0);
  const above = placed.filter((part) => part.side === "above").length;
  const below = placed.length - above;
  const top = above * LEVEL_PX + (above > 0 ? 8 : 0);
  const height = top + BAR_PX + below * LEVEL_PX + (below > 0 ? 8 : 0);
  const tail = unit ? `\u00a0${unit}` : "";
  return (
    <figure className={styles.figure}>
      <svg
        className={styles.svg}
        width="100%"
        height={height}
        role="img"
        aria-label={`${label}: ${parts.map((part) => `${part.label} ${format(part.value)}${tail}`).join(", ")}; together ${format(total)}${tail}`}
      >
        {placed.map((part, index) => (
          <rect
            key={part.label}
            className={styles[`part${index % TONES}`]}
            x={`${part.startPct}%`}
            width={`${part.widthPct}%`}
            y={top}
            height={BAR_PX}
          />
        ))}
        {placed.slice(1).map((part) => (
          <line
            key={part.label}
            className={styles.separator}
            x1={`${part.startPct}%`}
            x2={`${part.startPct}%`}
            y1={top}
            y2={top + BAR_PX}
          />
        ))}
        {placed.map((part) => {
          const isAbove = part.side === "above";
          const edge = isAbove ? top : top + BAR_PX;
          const base = isAbove ? edge - 8 - part.level * LEVEL_PX : edge + 18 + part.level * LEVEL_PX;
          const x = `${part.centerPct}%`;
          return (
            <g key={part.label}>
              <line className={styles.leader} x1={x} x2={x} y1={edge} y2={base} />
              <text x={x} y={base} dx={isAbove ? -5 : 5} textAnchor={isAbove ? "end" : "start"}>
                {part.label} <tspan className={styles.strong}>{format(part.value) + tail}</tspan>
              </text>
            </g>
          );
        })}
      </svg>
      <details className={styles.numbers}>
        <summary>The numbers as a table</summary>
        <DataTable
          caption={label}
          captionHidden
          columns={[
            { key: "label", head: "Part", names: true, cell: (part: Part) => part.label, total: "Total" },
            {
              key: "value",
              head: "Amount",
              unit,
              align: "number",
              cell: (part) => format(part.value),
              total: format(total),
            },
            {
              key: "share",
              head: "Share",
              unit: "%",
              align: "number",
              cell: (part) => (total > 0 ? ((part.value / total) * 100).toFixed(0) : "0"),
            },
          ]}
          rows={parts}
          rowKey={(part) => part.label}
        />
      </details>
    </figure>
  );
}
