import { HOURS_A_WEEK } from "./local-week-hours";

/**
 * Mean of a trend by wall-clock hour of the week: seven rows (Monday first) of 24, null where nothing was recorded.
 * `weekHours` is `localWeekHours` of the same grid.
 */
export function weekHourMeans(values: Float64Array, weekHours: Uint8Array): (number | null)[][] {
  const sum = new Float64Array(HOURS_A_WEEK);
  const count = new Float64Array(HOURS_A_WEEK);
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    const hour = weekHours[i] as number;
    sum[hour] = (sum[hour] as number) + value;
    count[hour] = (count[hour] as number) + 1;
  }
  return Array.from({ length: 7 }, (_, day) =>
    Array.from({ length: 24 }, (_, hour) => {
      const k = day * 24 + hour;
      const n = count[k] as number;
      return n > 0 ? (sum[k] as number) / n : null;
    }),
  );
}
