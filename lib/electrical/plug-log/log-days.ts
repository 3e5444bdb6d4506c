import { isoWeekday, localDateFromDayNumber } from "@/lib/time/civil-date";
import { localDaysOver } from "@/lib/time/local-days";
import { holidayDays, isOccupied, type OccupiedHours } from "@/lib/time/occupied-hours";
import type { ZoneTable } from "@/lib/time/zone-table";
import type { PlugDay } from "./plug-log-figures";
import type { PlugSeries } from "./plug-series";

/** A day counts as whole when this share of its hours was logged: a logger is moved now and then. */
export const WHOLE_DAY_SHARE = 0.95;
export const isWhole = (day: Pick<PlugDay, "loggedHours" | "dayHours">): boolean =>
  day.loggedHours >= WHOLE_DAY_SHARE * day.dayHours;

export type LogByDay = {
  days: PlugDay[];
  profile: { occupiedW: (number | null)[]; otherW: (number | null)[] };
  /** Above the off level outside occupied hours. */
  outsideOccupied: { hours: number; energyKwh: number };
  onHours: number;
};

type Sum = { joules: number; seconds: number };
const sums = (count: number): Sum[] => Array.from({ length: count }, () => ({ joules: 0, seconds: 0 }));

/**
 * Energy by local day, mean power by hour of the day, and what ran outside occupied hours. Each reading counts to the day
 * and hour in which it begins; readings of seconds make no difference, and those of an hour begin with it.
 */
export function logByDay(
  series: PlugSeries,
  isOn: (at: number) => boolean,
  hours: OccupiedHours,
  zone: ZoneTable,
): LogByDay {
  const { tsUtcSeconds, powerW, holdSeconds } = series;
  const last = tsUtcSeconds.length - 1;
  const toUtcSeconds = (tsUtcSeconds[last] as number) + Math.max(1, holdSeconds[last] as number);
  const local = localDaysOver(zone, { fromUtcSeconds: tsUtcSeconds[0] as number, toUtcSeconds });
  const byDay = sums(local.count);
  const [occupiedHoursOfDay, otherHoursOfDay] = [sums(24), sums(24)];
  const outside: Sum = { joules: 0, seconds: 0 };
  let onSeconds = 0;
  const holidays = holidayDays(hours);
  const isOccupiedDay = (day: number): boolean =>
    !holidays.has(day) && (hours.weekdays[isoWeekday(day)] ?? []).length > 0;
  for (let i = 0; i <= last; i++) {
    const held = holdSeconds[i] as number;
    if (!(held > 0)) continue;
    const wall = zone.localFromUtc(tsUtcSeconds[i] as number);
    const day = Math.floor(wall / 86_400);
    const minute = Math.floor((wall - day * 86_400) / 60);
    const joules = (powerW[i] as number) * held;
    add(byDay[day - local.firstDay], joules, held);
    add((isOccupiedDay(day) ? occupiedHoursOfDay : otherHoursOfDay)[Math.floor(minute / 60)], joules, held);
    if (!isOn(i)) continue;
    onSeconds += held;
    if (!isOccupied(hours, day, minute, holidays)) add(outside, joules, held);
  }
  const days = byDay.map((sum, k) => ({
    date: localDateFromDayNumber(local.firstDay + k),
    energyKwh: sum.joules / 3.6e6,
    loggedHours: sum.seconds / 3600,
    dayHours: ((local.edges[k + 1] as number) - (local.edges[k] as number)) / 3600,
    isOccupied: isOccupiedDay(local.firstDay + k),
  }));
  const profile = { occupiedW: occupiedHoursOfDay.map(meanW), otherW: otherHoursOfDay.map(meanW) };
  return {
    days,
    profile,
    outsideOccupied: { hours: outside.seconds / 3600, energyKwh: outside.joules / 3.6e6 },
    onHours: onSeconds / 3600,
  };
}

function add(sum: Sum | undefined, joules: number, seconds: number): void {
  if (!sum) return;
  sum.joules += joules;
  sum.seconds += seconds;
}

const meanW = ({ joules, seconds }: Sum): number | null => (seconds === 0 ? null : joules / seconds);
