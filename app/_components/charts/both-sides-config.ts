import type { ChartConfiguration, ChartDataset } from "chart.js";
import { formatNumber, type TemperatureUnit } from "@/lib/units/format";
import type { ChartTheme } from "./chart-theme";
import { endLabels } from "./end-labels";
import { shownTemperature, temperatureSign } from "./shown-temperature";

type Share = { median: number; low: number; high: number };

/** Shares (0 to 1, with their 90 % interval) who want it warmer and cooler at a zone air temperature [°C], and desk-hours about it. */
export type SidesAt = { airTempC: number; warmer: Share; cooler: Share; deskHours: number };

/** Desk-hours stand behind in the lower third, so that they are no third line. */
const HOURS_ROOM = 3;
const DASH = [6, 4];

/**
 * Both shares as lines with their intervals, one whole and one dashed so that they part without colour, over the desk-hours of
 * each degree as steps.
 */
export function bothSidesConfig(
  points: readonly SidesAt[],
  theme: ChartTheme,
  unit: TemperatureUnit,
): ChartConfiguration<"line"> {
  const font = { family: theme.fontFamily, size: 13 };
  const most = Math.max(1, ...points.map(({ deskHours }) => deskHours));
  const first = points[0]?.airTempC ?? 20;
  const last = points.at(-1)?.airTempC ?? first;
  return {
    type: "line",
    data: {
      datasets: [
        hoursSteps(points, theme, unit),
        ...shareLines("want it warmer", points, (at) => at.warmer, { color: theme.cold, dash: [] }, unit),
        ...shareLines("want it cooler", points, (at) => at.cooler, { color: theme.warm, dash: DASH }, unit),
      ],
    },
    options: {
      parsing: false,
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      font,
      color: theme.inkSoft,
      layout: { padding: { right: 108, top: 4 } },
      scales: {
        x: {
          type: "linear",
          min: shownTemperature(first - 0.5, unit),
          max: shownTemperature(last + 0.5, unit),
          grid: { display: false },
          border: { color: theme.ink },
          // A tick at each degree Celsius that was counted, whichever unit it is written in.
          afterBuildTicks: (axis) => {
            axis.ticks = points.map(({ airTempC }) => ({ value: shownTemperature(airTempC, unit) }));
          },
          ticks: {
            color: theme.inkSoft,
            font,
            maxRotation: 0,
            autoSkip: true,
            callback: (value) =>
              `${formatNumber(Number(value), { decimals: unit === "F" ? 1 : 0 })}\u2009${temperatureSign(unit)}`,
          },
        },
        y: {
          type: "linear",
          min: 0,
          max: 100,
          grid: { color: theme.rule, drawTicks: false },
          border: { display: false },
          ticks: { color: theme.inkSoft, font, padding: 6, stepSize: 20, callback: (value) => `${value}\u202f%` },
        },
        hours: { type: "linear", display: false, min: 0, max: HOURS_ROOM * most },
      },
    },
    plugins: [endLabels(theme)],
  };
}

function hoursSteps(points: readonly SidesAt[], theme: ChartTheme, unit: TemperatureUnit): ChartDataset<"line"> {
  return {
    data: points.flatMap(({ airTempC, deskHours }) =>
      [airTempC - 0.5, airTempC + 0.5].map((edge) => ({ x: shownTemperature(edge, unit), y: deskHours })),
    ),
    yAxisID: "hours",
    pointRadius: 0,
    borderColor: theme.rule,
    borderWidth: 1,
    backgroundColor: theme.comfortBand,
    fill: "origin",
    order: 9,
  };
}

function shareLines(
  label: string,
  points: readonly SidesAt[],
  of: (at: SidesAt) => Share,
  { color, dash }: { color: string; dash: number[] },
  unit: TemperatureUnit,
): ChartDataset<"line">[] {
  const line = (end: keyof Share) =>
    points.map((at) => ({ x: shownTemperature(at.airTempC, unit), y: 100 * of(at)[end] }));
  const edge = { pointRadius: 0, borderColor: color, borderWidth: 0.75, order: 5 };
  return [
    { ...edge, data: line("low"), fill: "+1", backgroundColor: faint(color) },
    { ...edge, data: line("high") },
    { label, data: line("median"), pointRadius: 0, borderColor: color, borderWidth: 2, borderDash: dash, order: 1 },
  ];
}

/** The same colour (a registered token reads as `rgb(r, g, b)`), nearly clear: an interval must not hide what stands behind it. */
const faint = (color: string): string => color.replace(/^rgb\((.*)\)$/, "rgba($1, 0.16)");
