import type { WeatherYearClock } from "@/lib/energy-model/weather-year-clock";
import { binLowC } from "@/lib/trends/outdoor-bins";

/**
 * Occupied cooling-season hours of the weather year that begin in one hour of the day of one month with outdoor air in one
 * bin, and the same hours weighted by the share of the cooling that the plant meets: [month, hour, bin, h, h].
 */
export type SeasonCell = readonly [month: number, hour: number, bin: number, hours: number, mechanicalHours: number];

/** Bins by their lower edges [°C], in whose order a cell's bin counts, and the cells. */
export type SeasonCalendar = { binsC: readonly number[]; cells: readonly SeasonCell[] };

/**
 * Lays the occupied season hours of a weather year out by month, hour of the day and outdoor bin. The plant's share is that of
 * an economizer between supply and return air (reference Q5), all of it without one.
 */
export function seasonCalendar(input: {
  dryBulbC: ArrayLike<number>;
  occupied: ArrayLike<number>;
  clock: WeatherYearClock;
  supplyAirTempC: number;
  returnAirTempC: number;
  hasEconomizer: boolean;
}): SeasonCalendar {
  const { dryBulbC, occupied, clock, supplyAirTempC: sat, returnAirTempC: ra } = input;
  const sums = new Map<string, { month: number; hour: number; lowC: number; hours: number; mechanicalHours: number }>();
  for (let i = 0; i < dryBulbC.length; i++) {
    const [outdoor, part] = [dryBulbC[i] as number, occupied[i] as number];
    if (!(outdoor >= sat) || part === 0) continue;
    const [month, hour, lowC] = [clock.month[i] as number, clock.hour[i] as number, binLowC(outdoor)];
    const key = `${month}/${hour}/${lowC}`;
    const sum = sums.get(key) ?? { month, hour, lowC, hours: 0, mechanicalHours: 0 };
    sums.set(key, sum);
    sum.hours += part;
    sum.mechanicalHours += part * (input.hasEconomizer && ra > sat ? Math.min(1, (outdoor - sat) / (ra - sat)) : 1);
  }
  const binsC = [...new Set([...sums.values()].map(({ lowC }) => lowC))].sort((a, b) => a - b);
  return {
    binsC,
    cells: [...sums.values()].map(({ month, hour, lowC, hours, mechanicalHours }) => [
      month,
      hour,
      binsC.indexOf(lowC),
      hours,
      Number(mechanicalHours.toPrecision(7)),
    ]),
  };
}

/** A month belongs to the season when it has this share of the hours of the month with the most: common practice, no source. */
const MONTH_OF_SEASON = 0.25;

/** First and last month of the longest run of months that cool, which may go over the new year; null without any hours. */
export function coolingMonths({ cells }: SeasonCalendar): { fromMonth: number; toMonth: number } | null {
  const hours = Array.from({ length: 12 }, () => 0);
  for (const [month, , , each] of cells) hours[month - 1] = (hours[month - 1] ?? 0) + each;
  const most = Math.max(...hours);
  if (most === 0) return null;
  const cools = (month: number): boolean => (hours[month % 12] ?? 0) >= MONTH_OF_SEASON * most;
  const runs = hours.map((_, from) => {
    let length = 0;
    while (length < 12 && cools(from + length)) length++;
    return { from, length };
  });
  const { from, length } = runs.reduce((best, each) => (each.length > best.length ? each : best));
  return { fromMonth: from + 1, toMonth: ((from + length - 1) % 12) + 1 };
}

/** Hours of each outdoor bin over a year. */
export function hoursByBin({ binsC, cells }: SeasonCalendar): number[] {
  const hours = binsC.map(() => 0);
  for (const [, , bin, each] of cells) hours[bin] = (hours[bin] ?? 0) + each;
  return hours;
}
