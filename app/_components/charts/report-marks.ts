import type { Point } from "./thin-points";
import type { ZoneSeries } from "./zone-series";

/** A report on a chart: where it lies on the line of zone air [°C]; null where no air is drawn within a gap's length of it. */
export type ReportMark = { t: number; vote: number; airTempC: number | null };

/** Marks of the reports, each on the zone air of its moment, between the samples before and after by the straight line that is drawn. */
export function reportMarks({ reports = [], zoneAir }: ZoneSeries, gapSeconds: number): ReportMark[] {
  return reports.map(({ t, vote }) => ({ t, vote, airTempC: valueAt(zoneAir, t, gapSeconds) }));
}

function valueAt(points: readonly Point[], t: number, gapSeconds: number): number | null {
  let [low, high] = [0, points.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] as Point).t <= t) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [points[low - 1], points[low]];
  if (before && after && after.t - before.t <= gapSeconds)
    return before.v + ((after.v - before.v) * (t - before.t)) / (after.t - before.t);
  // At the ends of a line the nearest sample stands for the moment, if it is near.
  const near = [before, after].filter((each) => each !== undefined && Math.abs(each.t - t) <= gapSeconds / 2);
  return near[0]?.v ?? null;
}
