import type { Grid } from "../grid";

/** Quarters of an hour of a day. */
export const QUARTERS = 96;

/** Mean of a trend by quarter of the local day; NaN where nothing was recorded: inside arrays only. */
export type DailyProfile = { values: Float64Array; days: number };

/** Wall-clock day and quarter (0-95) in which each interval of a grid begins. Made once a building. */
export type LocalClock = { day: Int32Array; quarter: Uint8Array };

export function localClock(grid: Grid, localFromUtc: (utcSeconds: number) => number): LocalClock {
  const day = new Int32Array(grid.count);
  const quarter = new Uint8Array(grid.count);
  for (let i = 0; i < grid.count; i++) {
    const local = localFromUtc(grid.startUtcSeconds + i * grid.stepSeconds);
    day[i] = Math.floor(local / 86_400);
    quarter[i] = Math.floor((local - (day[i] as number) * 86_400) / 900);
  }
  return { day, quarter };
}

/** Profile over the intervals of days from `fromDay` to before `toDay` that `countsDay` lets through. */
export function dailyProfile(
  values: Float64Array,
  clock: LocalClock,
  of: { fromDay: number; toDay: number; countsDay: (day: number) => boolean },
): DailyProfile {
  const sum = new Float64Array(QUARTERS);
  const count = new Float64Array(QUARTERS);
  let days = 0;
  let lastDay = Number.NaN;
  let counts = false;
  for (let i = 0; i < values.length; i++) {
    const day = clock.day[i] as number;
    const value = values[i] as number;
    if (day < of.fromDay || day >= of.toDay || Number.isNaN(value)) continue;
    if (day !== lastDay) {
      lastDay = day;
      counts = of.countsDay(day);
      if (counts) days++;
    }
    if (!counts) continue;
    const k = clock.quarter[i] as number;
    sum[k] = (sum[k] as number) + value;
    count[k] = (count[k] as number) + 1;
  }
  return { values: sum.map((each, k) => each / (count[k] as number)), days };
}
