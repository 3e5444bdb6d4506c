import { formatFigure, prefixed } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";
import { DataTable } from "@/app/_components/ui/data-table";
import { Disclosure } from "@/app/_components/ui/disclosure";
import type { CostCurve } from "@/lib/proposals/live/cost-curve";
import styles from "./proposal.module.css";

type Props = { curve: CostCurve; currency: string };

const WIDTH = 560;
const HEIGHT = 206;
const TOP = 28;
const BASE = 176;

/** Expected cost of a year over the rise of the cooling setpoint, with its range, its flat part and the comfort limit. */
export function CurveFigure({ curve, currency }: Props) {
  const { points, flat, allowedToK, hasReportCost } = curve;
  const sign = currencySign(currency);
  const last = points.at(-1)?.raiseK ?? 1;
  const high = Math.max(0, ...points.map((each) => each.p90));
  const low = Math.min(0, ...points.map((each) => each.p10));
  const x = (raiseK: number): number => (raiseK / last) * WIDTH;
  const y = (cost: number): number => TOP + ((high - cost) / (high - low || 1)) * (BASE - TOP);
  const line = (of: (point: CostCurve["points"][number]) => number, from = points): string =>
    from.map((each) => `${x(each.raiseK).toFixed(1)},${y(of(each)).toFixed(1)}`).join(" L ");
  const money = (value: number): string => prefixed(formatFigure(value, { decimals: 0 }), sign);
  const words =
    flat.toK > flat.fromK
      ? `Between ${flat.fromK} and ${flat.toK}\u202fK the expected cost hardly differs: choose within it by comfort.`
      : `The least expected cost within the comfort limit is at ${flat.toK}\u202fK.`;
  return (
    <figure className={styles.figure}>
      <figcaption>
        {words} Up to {allowedToK}
        {"\u202f"}K (dashed) at most 10{"\u202f"}% of the hours get warmer than the comfort range. Line: expected cost
        of a year beside today's at the same rise in all zones, other levers as they stand; grey: its 80{"\u202f"}%
        range; shaded: the flat part.
        {hasReportCost ? "" : " Reports have no cost in the settings, so that only energy is counted."}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
        <rect
          className={styles.band}
          x={x(flat.fromK)}
          width={Math.max(2, x(flat.toK) - x(flat.fromK))}
          y={TOP}
          height={BASE - TOP}
        />
        <path
          className={styles.spread}
          d={`M ${line((each) => each.p90)} L ${line((each) => each.p10, points.toReversed())} Z`}
        />
        <path className={styles.outline} d={`M ${line((each) => each.expected)}`} />
        {moneyTicks(low, high).map((each) => (
          <g key={each}>
            <line className={styles.hair} x1={0} x2={WIDTH} y1={y(each)} y2={y(each)} />
            <text className={styles.onLine} x={WIDTH - 6} y={y(each) - 4} textAnchor="end">
              {money(each)}
            </text>
          </g>
        ))}
        <line className={styles.limit} x1={x(allowedToK)} x2={x(allowedToK)} y1={TOP} y2={BASE} />
        {points
          .filter((each) => each.raiseK % 1 === 0)
          .map((each) => (
            <text
              key={each.raiseK}
              className={each.raiseK % 2 === 1 ? styles.alternate : undefined}
              x={x(each.raiseK)}
              y={BASE + 20}
              textAnchor={each.raiseK === 0 ? "start" : each.raiseK === last ? "end" : "middle"}
            >
              {each.raiseK} K
            </text>
          ))}
      </svg>
      <Disclosure summary="The numbers as a table">
        <DataTable
          caption="Cost of a year beside today's, by rise of the cooling setpoint"
          rows={points}
          rowKey={(point) => point.raiseK}
          columns={[
            {
              key: "raise",
              head: "Rise",
              unit: "K",
              names: true,
              align: "number",
              cell: (point) => formatFigure(point.raiseK, { decimals: 1 }),
            },
            { key: "expected", head: "Expected", align: "number", cell: (point) => money(point.expected) },
            { key: "p10", head: "P10", align: "number", cell: (point) => money(point.p10) },
            { key: "p90", head: "P90", align: "number", cell: (point) => money(point.p90) },
            {
              key: "warm",
              head: "Too warm",
              unit: "% of hours",
              align: "number",
              cell: (point) => formatFigure(100 * point.warmShare, { decimals: 1 }),
            },
          ]}
        />
      </Disclosure>
    </figure>
  );
}

/** Round amounts over a span, three to six of them. */
function moneyTicks(low: number, high: number): number[] {
  const rough = (high - low) / 4 || 1;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((each) => each * power >= rough) ?? 10);
  const ticks: number[] = [];
  for (let at = Math.ceil(low / step) * step; at <= high + 1e-9; at += step) ticks.push(at === 0 ? 0 : at);
  return ticks;
}
