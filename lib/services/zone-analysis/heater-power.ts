import type { PointRow } from "@/db/queries/points";
import type { Grid } from "@/lib/trends/grid";
import { resample } from "@/lib/trends/resample";
import type { PointSeries } from "@/lib/trends/samples";

/** What the heaters of a zone take together by their own meters; a heater whose meter says nothing counts as off. */
export function heaterPower(
  points: readonly PointRow[],
  series: Map<number, PointSeries>,
  grid: Grid,
): Float64Array | null {
  const meters = points.flatMap(({ id, kind }) => (kind === "heater-power" ? (series.get(id) ?? []) : []));
  if (meters.length === 0) return null;
  const total = new Float64Array(grid.count).fill(Number.NaN);
  for (const meter of meters)
    resample(meter, grid).forEach((each, i) => {
      if (!Number.isNaN(each)) total[i] = each + (Number.isNaN(total[i] as number) ? 0 : (total[i] as number));
    });
  return total;
}
