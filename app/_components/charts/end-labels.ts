import type { Plugin } from "chart.js";
import type { ChartTheme } from "./chart-theme";

const LINE_PX = 15;

/** Names each labelled line at its right end, moved apart where the ends are close. */
export function endLabels(theme: ChartTheme): Plugin<"line"> {
  return {
    id: "endLabels",
    afterDraw(chart) {
      const { ctx, chartArea } = chart;
      const labels = chart.data.datasets.flatMap((dataset, index) => {
        const last = dataset.data[dataset.data.length - 1];
        if (!dataset.label || !last || typeof last !== "object") return [];
        const y = chart.getDatasetMeta(index).yScale?.getPixelForValue(last.y ?? 0) ?? 0;
        return [{ text: dataset.label, color: String(dataset.borderColor), y }];
      });
      const places = spread(
        labels.map(({ y }) => y),
        { gap: LINE_PX, min: chartArea.top, max: chartArea.bottom },
      );
      ctx.font = `13px ${theme.fontFamily}`;
      ctx.textBaseline = "middle";
      ctx.textAlign = "left";
      labels.forEach(({ text, color }, index) => {
        ctx.fillStyle = color;
        ctx.fillText(text, chartArea.right + 8, places[index] ?? 0);
      });
    },
  };
}

/** Moves positions apart to at least `gap`, keeping their order and staying within the limits where they fit. */
export function spread(
  positions: readonly number[],
  { gap, min, max }: { gap: number; min: number; max: number },
): number[] {
  const order = positions.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y || a.index - b.index);
  let floor = min;
  for (const each of order) {
    each.y = Math.max(each.y, floor);
    floor = each.y + gap;
  }
  let ceiling = max;
  for (const each of [...order].reverse()) {
    each.y = Math.min(each.y, ceiling);
    ceiling = each.y - gap;
  }
  const placed: number[] = [];
  for (const { y, index } of order) placed[index] = y;
  return placed;
}
