import type { ChartConfiguration, ChartDataset } from "chart.js";
import type { TemperatureUnit } from "@/lib/units/format";
import type { ChartTheme } from "./chart-theme";
import { endLabels } from "./end-labels";
import { type LocalTick, localTicks } from "./local-ticks";
import { reportMarks } from "./report-marks";
import { shownTemperature, temperatureSign } from "./shown-temperature";
import { type Point, thinPoints } from "./thin-points";
import { LANES_PX, zoneLanes } from "./zone-lanes";
import type { ZoneSeries } from "./zone-series";

const BUCKETS = 500;
const TWO_HOURS = 7200;

/** Chart of a zone over time in °C or °F: setpoints as steps, zone air as a line, comfort range as a soft band. */
export function zoneTimeConfig(
  series: ZoneSeries,
  theme: ChartTheme,
  unit: TemperatureUnit,
): ChartConfiguration<"line"> {
  const scale = temperatureScale(series, unit);
  let ticks: LocalTick[] = [];
  return {
    type: "line",
    data: { datasets: zoneDatasets(series, theme, unit) },
    options: {
      parsing: false,
      normalized: true,
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      font: { family: theme.fontFamily, size: 13 },
      color: theme.inkSoft,
      layout: { padding: { right: 76, top: 4 } },
      scales: {
        x: {
          type: "linear",
          min: series.from,
          max: series.to,
          grid: { color: theme.rule, drawTicks: true, tickLength: 4 },
          border: { color: theme.ink },
          ticks: {
            color: theme.inkSoft,
            font: { family: theme.fontFamily, size: 13 },
            autoSkip: false,
            maxRotation: 0,
            callback: (value) => ticks.find((tick) => tick.t === value)?.label ?? "",
          },
          afterBuildTicks: (axis) => {
            const maxTicks = Math.max(2, Math.floor((axis.width || 600) / 64));
            ticks = localTicks({ from: series.from, to: series.to, timeZone: series.timeZone, maxTicks });
            axis.ticks = ticks.map((tick) => ({ value: tick.t }));
          },
        },
        y: {
          type: "linear",
          min: scale.min,
          max: scale.max,
          grid: { color: theme.rule, drawTicks: false },
          border: { display: false },
          ticks: {
            color: theme.inkSoft,
            font: { family: theme.fontFamily, size: 13 },
            padding: 6,
            precision: 0,
            maxTicksLimit: 7,
            callback: (value) => `${value}\u2009${temperatureSign(unit)}`,
          },
        },
      },
    },
    plugins: [zoneLanes({ series, marks: reportMarks(series, spanOf(series)), unit }, theme), endLabels(theme)],
  };
}

/** Datasets, the lower `order` over the higher; those with a label are named at the end of their line. */
export function zoneDatasets(series: ZoneSeries, theme: ChartTheme, unit: TemperatureUnit): ChartDataset<"line">[] {
  const at = (t: number, tempC: number) => ({ x: t, y: shownTemperature(tempC, unit) });
  const band = series.comfortBand ?? [];
  const line = { borderWidth: 1, pointRadius: 0, spanGaps: spanOf(series), fill: false as const };
  const datasets: ChartDataset<"line">[] = [];
  if (band.length > 0) {
    const edge = { ...line, borderWidth: 0, stepped: "before" as const, spanGaps: true, label: "", order: 9 };
    datasets.push(
      { ...edge, data: band.map(({ t, low }) => at(t, low)) },
      { ...edge, data: band.map(({ t, high }) => at(t, high)), fill: "-1", backgroundColor: theme.comfortBand },
    );
  }
  const add = (
    label: string,
    points: readonly Point[] | undefined,
    borderColor: string,
    extra: Partial<ChartDataset<"line">>,
  ) => {
    if (!points || points.length === 0) return;
    const data = thinPoints(points, BUCKETS).map(({ t, v }) => at(t, v));
    datasets.push({ ...line, label, data, borderColor, ...extra });
  };
  add("heating", series.heatingSetpoint, theme.warm, { order: 2, stepped: "before", borderWidth: 1.5 });
  add("cooling", series.coolingSetpoint, theme.cold, { order: 2, stepped: "before", borderWidth: 1.5 });
  add("zone air", series.zoneAir, theme.ink, { order: 1, borderWidth: 1.5, borderJoinStyle: "round" });
  return datasets;
}

/**
 * The stated scale, or whole degrees of the unit around the data, with room under it for the lanes of states and
 * heaters and above it for the reports.
 */
export function temperatureScale(series: ZoneSeries, unit: TemperatureUnit): { min: number; max: number } {
  const shown = (tempC: number): number => shownTemperature(tempC, unit);
  if (series.scaleC) return { min: shown(series.scaleC.min), max: shown(series.scaleC.max) };
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const see = (value: number): void => {
    low = Math.min(low, value);
    high = Math.max(high, value);
  };
  for (const points of [series.zoneAir, series.coolingSetpoint, series.heatingSetpoint])
    for (const { v } of points ?? []) see(v);
  for (const { low: a, high: b } of series.comfortBand ?? []) {
    see(a);
    see(b);
  }
  if (low > high) return { min: Math.round(shown(18)), max: Math.round(shown(28)) };
  const span = Math.max(2, shown(high) - shown(low));
  const lanes = (LANES_PX.states + LANES_PX.heaters) / 220;
  return {
    min: Math.floor(shown(low) - span * lanes),
    max: Math.ceil(shown(high) + (series.reports?.length ? span * 0.12 : 0)),
  };
}

function spanOf(series: ZoneSeries): number {
  return Math.max(series.gapSeconds ?? TWO_HOURS, (2 * (series.to - series.from)) / BUCKETS);
}
