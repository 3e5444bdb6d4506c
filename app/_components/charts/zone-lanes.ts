import type { Chart, Plugin } from "chart.js";
import type { ZoneState } from "@/lib/trends/zone-state";
import type { TemperatureUnit } from "@/lib/units/format";
import type { ChartTheme } from "./chart-theme";
import type { ReportMark } from "./report-marks";
import { shownTemperature } from "./shown-temperature";
import type { ZoneSeries } from "./zone-series";

/** Heights of the strips on the base line of a zone's chart. */
export const LANES_PX = { states: 12, heaters: 12 } as const;

/** Radius of a report's mark by the size of its vote, 0 to 3 [px]. */
const MARK_RADIUS = [4, 5, 6.5, 8] as const;

type Drawn = { series: ZoneSeries; marks: readonly ReportMark[]; unit: TemperatureUnit };

/** Draws what is no line: states along the bottom, heaters as ticks on the base line, reports on the zone air that they are of. */
export function zoneLanes({ series, marks, unit }: Drawn, theme: ChartTheme): Plugin<"line"> {
  return {
    id: "zoneLanes",
    afterDatasetsDraw(chart) {
      drawStates(chart, series, theme);
      drawHeaters(chart, series, theme);
      drawReports(chart, marks, theme, unit);
    },
  };
}

function drawStates(chart: Chart, { states = [] }: ZoneSeries, theme: ChartTheme): void {
  const { ctx, chartArea } = chart;
  const top = chartArea.bottom - LANES_PX.states;
  for (const { from, to, state } of states) {
    const left = Math.max(chartArea.left, pixel(chart, from));
    const width = Math.min(chartArea.right, pixel(chart, to)) - left;
    const fill = stateFill(ctx, state, theme);
    if (width <= 0 || fill === null) continue;
    ctx.fillStyle = fill;
    ctx.fillRect(left, top, Math.max(1, width), LANES_PX.states);
  }
}

/** Fill of a state; fault is hatched so that it stays apart in grey print; nothing where there is nothing to say. */
function stateFill(ctx: CanvasRenderingContext2D, state: ZoneState, theme: ChartTheme): string | CanvasPattern | null {
  if (state === "cooling") return theme.stateCooling;
  if (state === "reheat") return theme.stateReheat;
  if (state === "deadband") return theme.stateDeadband;
  if (state === "undetermined") return theme.stateUndetermined;
  return state === "fault" ? hatch(ctx, theme.stateFault) : null;
}

function hatch(ctx: CanvasRenderingContext2D, color: string): CanvasPattern | null {
  const tile = document.createElement("canvas");
  tile.width = 6;
  tile.height = 6;
  const pen = tile.getContext("2d");
  if (!pen) return null;
  pen.strokeStyle = color;
  pen.lineWidth = 1.5;
  pen.beginPath();
  for (const shift of [-6, 0, 6]) {
    pen.moveTo(shift - 1, 7);
    pen.lineTo(shift + 7, -1);
  }
  pen.stroke();
  return ctx.createPattern(tile, "repeat");
}

function drawHeaters(chart: Chart, { heaters = [], states = [] }: ZoneSeries, theme: ChartTheme): void {
  const { ctx, chartArea } = chart;
  const base = chartArea.bottom - (states.length > 0 ? LANES_PX.states : 0);
  ctx.strokeStyle = theme.ink;
  ctx.lineWidth = 2;
  ctx.beginPath();
  for (const { t } of heaters) {
    const x = pixel(chart, t);
    ctx.moveTo(x, base);
    ctx.lineTo(x, base - LANES_PX.heaters + 2);
  }
  ctx.stroke();
}

/** A mark on the zone air of its moment, larger the stronger the vote; on the upper edge where no air is drawn. */
function drawReports(chart: Chart, marks: readonly ReportMark[], theme: ChartTheme, unit: TemperatureUnit): void {
  const { ctx, chartArea } = chart;
  ctx.lineWidth = 1.5;
  // The strongest last: what lies close together is told by the worst of it.
  for (const { t, vote, airTempC } of marks.toSorted((one, other) => Math.abs(one.vote) - Math.abs(other.vote))) {
    const radius = MARK_RADIUS[Math.abs(vote)] ?? MARK_RADIUS[0];
    const x = pixel(chart, t);
    const onLine = airTempC === null ? undefined : chart.scales.y?.getPixelForValue(shownTemperature(airTempC, unit));
    const y = onLine ?? chartArea.top + radius + 2;
    const arm = radius / 2;
    ctx.strokeStyle = vote < 0 ? theme.cold : vote > 0 ? theme.warm : theme.inkSoft;
    ctx.fillStyle = theme.paper;
    ctx.beginPath();
    ctx.arc(x, y, radius, 0, 2 * Math.PI);
    ctx.fill();
    if (vote !== 0) {
      ctx.moveTo(x - arm, y);
      ctx.lineTo(x + arm, y);
    }
    if (vote > 0) {
      ctx.moveTo(x, y - arm);
      ctx.lineTo(x, y + arm);
    }
    ctx.stroke();
  }
}

const pixel = (chart: Chart, t: number): number => chart.scales.x?.getPixelForValue(t) ?? 0;
