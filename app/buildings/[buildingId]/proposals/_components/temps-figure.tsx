import { formatFigure } from "@/app/_components/quantity/format-figure";
import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { LivePicture } from "@/lib/proposals/live-picture";
import { formatTemperature } from "@/lib/units/format";
import styles from "./proposal.module.css";

type Props = {
  temps: LivePicture["temps"];
  comfort: { lowerC: number; upperC: number };
  unit: "C" | "F";
  name: string;
};

const hoursOf = (hours: number): string => formatFigure(hours, { decimals: 0 });

const WIDTH = 560;
const HEIGHT = 168;
const BASE = 140;

/** Occupied hours by zone air temperature, before as outline and after as bars, with the comfort range behind. */
export function TempsFigure({ temps, comfort, unit, name }: Props) {
  const most = Math.max(1, ...temps.flatMap((each) => [each.hoursBefore, each.hoursAfter]));
  const each = WIDTH / temps.length;
  const first = temps[0]?.lowC ?? 0;
  const x = (tempC: number): number => Math.min(WIDTH, Math.max(0, ((tempC - first) / 0.5) * each));
  const y = (hours: number): number => BASE - (hours / most) * (BASE - 20);
  const outline = temps.map((t) => `V ${y(t.hoursBefore).toFixed(1)} H ${x(t.lowC + 0.5).toFixed(1)}`).join(" ");
  const mean = (of: "hoursBefore" | "hoursAfter"): string => {
    const hours = temps.reduce((sum, t) => sum + t[of], 0);
    const kh = temps.reduce((sum, t) => sum + t[of] * (t.lowC + 0.25), 0);
    return hours > 0 ? formatTemperature(kh / hours, unit).text : "none";
  };
  return (
    <figure className={styles.figure}>
      <figcaption>
        Occupied hours of the proposal's zones by air temperature, {name}: mean {mean("hoursBefore")} before (line),{" "}
        {mean("hoursAfter")} after (bars); the comfort range is shaded.
      </figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Mean before ${mean("hoursBefore")}, after ${mean("hoursAfter")}`}
      >
        <rect
          className={styles.band}
          x={x(comfort.lowerC)}
          width={x(comfort.upperC) - x(comfort.lowerC)}
          y={12}
          height={BASE - 12}
        />
        {temps.map((t) => (
          <rect
            key={t.lowC}
            className={styles.bar}
            x={x(t.lowC) + 2}
            width={each - 4}
            y={y(t.hoursAfter)}
            height={BASE - y(t.hoursAfter)}
          />
        ))}
        <path className={styles.outline} d={`M 0 ${BASE} ${outline} V ${BASE}`} />
        <line className={styles.axis} x1={0} x2={WIDTH} y1={BASE} y2={BASE} />
        {temps
          .filter((t) => t.lowC % 1 === 0)
          .map((t) => (
            <text
              key={t.lowC}
              className={t.lowC % 2 === 0 ? styles.alternate : undefined}
              x={x(t.lowC)}
              y={BASE + 20}
              textAnchor={t.lowC === first ? "start" : "middle"}
            >
              {formatTemperature(t.lowC, unit).value}
            </text>
          ))}
      </svg>
      <Disclosure summary="The hours as a table">
        <DataTable
          caption={`Occupied hours a year by zone air temperature, ${name}`}
          captionHidden
          rows={temps.filter((t) => t.hoursBefore >= 0.5 || t.hoursAfter >= 0.5)}
          rowKey={(t) => t.lowC}
          columns={[
            {
              key: "air",
              head: "Zone air",
              names: true,
              cell: (t) => `${formatTemperature(t.lowC, unit).value} to ${formatTemperature(t.lowC + 0.5, unit).text}`,
            },
            { key: "before", head: "Before", unit: "h", align: "number", cell: (t) => hoursOf(t.hoursBefore) },
            { key: "after", head: "After", unit: "h", align: "number", cell: (t) => hoursOf(t.hoursAfter) },
          ]}
        />
      </Disclosure>
    </figure>
  );
}
