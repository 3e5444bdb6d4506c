import type { ChartConfiguration, ChartDataset } from "chart.js";
import { formatNumber, type TemperatureUnit } from "@/lib/units/format";
import type { ChartTheme } from "./chart-theme";
import { endLabels } from "./end-labels";
import { shownTemperature, temperatureSign } from "./shown-temperature";

/** Readings of energy against outdoor air temperature with the line fitted to them; plain data in °C and kWh. */
export type EnergyGroup = {
  /** Stands at the end of the line, such as "Occupied days". */
  name: string;
  points: { outdoorC: number; energyKwh: number }[];
  /** Corners of the fitted line, coldest first; empty without a model. */
  line: { outdoorC: number; energyKwh: number }[];
};

/** Scatter with lines: the first group as filled marks, the others as rings, so that they part without colour. */
export function energyScatterConfig(
  groups: readonly EnergyGroup[],
  theme: ChartTheme,
  unit: TemperatureUnit,
): ChartConfiguration<"line"> {
  const font = { family: theme.fontFamily, size: 13 };
  return {
    type: "line",
    data: { datasets: groups.flatMap((group, i) => datasetsOf(group, i, theme, unit)) },
    options: {
      parsing: false,
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      font,
      color: theme.inkSoft,
      layout: { padding: { right: 104, top: 4 } },
      scales: {
        x: {
          type: "linear",
          grid: { color: theme.rule, tickLength: 4 },
          border: { color: theme.ink },
          ticks: {
            color: theme.inkSoft,
            font,
            maxRotation: 0,
            maxTicksLimit: 9,
            callback: (value) => `${formatNumber(Number(value), { decimals: 0 })}\u2009${temperatureSign(unit)}`,
          },
        },
        y: {
          type: "linear",
          beginAtZero: true,
          grid: { color: theme.rule, drawTicks: false },
          border: { display: false },
          ticks: {
            color: theme.inkSoft,
            font,
            padding: 6,
            maxTicksLimit: 7,
            callback: (value) => `${formatNumber(Number(value), { decimals: 0 })} kWh`,
          },
        },
      },
    },
    plugins: [endLabels(theme)],
  };
}

function datasetsOf(
  { name, points, line }: EnergyGroup,
  index: number,
  theme: ChartTheme,
  unit: TemperatureUnit,
): ChartDataset<"line">[] {
  const at = ({ outdoorC, energyKwh }: { outdoorC: number; energyKwh: number }) => ({
    x: shownTemperature(outdoorC, unit),
    y: energyKwh,
  });
  const first = index === 0;
  return [
    {
      // Without a line the marks themselves are named, beside the warmest of them.
      label: line.length === 0 ? name : undefined,
      data: points.map(at).sort((one, other) => one.x - other.x),
      borderColor: theme.inkSoft,
      showLine: false,
      pointRadius: first ? 2 : 2.5,
      pointBackgroundColor: first ? theme.stateCooling : "transparent",
      pointBorderColor: first ? theme.stateCooling : theme.inkSoft,
      pointBorderWidth: 1,
      order: 2,
    },
    {
      label: name,
      data: line.map(at),
      pointRadius: 0,
      borderColor: theme.ink,
      borderWidth: first ? 2 : 1.5,
      borderDash: first ? [] : [5, 3],
      order: 1,
    },
  ];
}
