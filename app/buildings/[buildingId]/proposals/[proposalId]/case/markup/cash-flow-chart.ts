import type { CaseChart } from "@/lib/business-case/case-document";
import { AGAINST, drawing, line, scaleOf, WIDTH, words } from "./chart-frame";

const TOP = 24;
const BOTTOM = 190;
const EDGE = 40;

/** Net flow of each year as a bar, and the running sum at present value as a line through dots. */
export function cashFlowChart(
  { caption, years }: Extract<CaseChart, { kind: "cash-flow" }>,
  whole: (amount: number) => string,
): string {
  const at = scaleOf(
    years.flatMap(({ net, presentCumulative }) => [net, presentCumulative]),
    BOTTOM,
    TOP,
  );
  const step = (WIDTH - 2 * EDGE) / years.length;
  const width = Math.min(46, step * 0.5);
  const middle = (place: number): number => EDGE + step * (place + 0.5);
  const bars = years.map(({ net }, place) => {
    const [y1, y2] = [at(Math.max(0, net)), at(Math.min(0, net))];
    const fill = net < 0 ? AGAINST : "#8a8f8b";
    const x = middle(place) - width / 2;
    return `<rect x="${x.toFixed(1)}" y="${y1.toFixed(1)}" width="${width.toFixed(1)}" height="${Math.max(0.8, y2 - y1).toFixed(1)}" fill="${fill}" stroke="#222" stroke-width="0.6"/>`;
  });
  const points = years.map(({ presentCumulative }, place) => [middle(place), at(presentCumulative)] as const);
  const path = points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
  const dots = points.map(
    ([x, y]) =>
      `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="3.2" fill="#fff" stroke="#111" stroke-width="1.4"/>`,
  );
  const sums = years.map(({ presentCumulative }, place) =>
    words(
      whole(presentCumulative),
      middle(place) + width / 2 + 5,
      at(presentCumulative) + 12,
      "start",
      ' font-weight="600" class="halo"',
    ),
  );
  const labels = years.map(({ year }, place) =>
    words(year === 0 ? "start" : `year ${year}`, middle(place), BOTTOM + 22, "middle"),
  );
  const key = words("Bars: net flow of the year. Line: sum so far at present value.", EDGE, BOTTOM + 42);
  return drawing(
    caption,
    BOTTOM + 50,
    `${bars.join("")}${line(EDGE, at(0), WIDTH - EDGE, at(0))}<polyline points="${path}" fill="none" stroke="#111" stroke-width="1.4"/>${dots.join("")}${sums.join("")}${labels.join("")}${key}`,
  );
}
