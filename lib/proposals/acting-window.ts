/** Season and hours in which a proposal's levers act: months 1 to 12, both included, may run over the new year; minutes by the wall clock. */
export type ActingWindow = { seasonFromMonth: number; seasonToMonth: number; fromMinute: number; toMinute: number };

export const ALL_YEAR: ActingWindow = { seasonFromMonth: 1, seasonToMonth: 12, fromMinute: 0, toMinute: 1440 };

export function isInSeason(month: number, { seasonFromMonth: from, seasonToMonth: to }: ActingWindow): boolean {
  return from <= to ? month >= from && month <= to : month >= from || month <= to;
}

/** Part of the hour of the day, 0 to 1, that lies in the window. */
export const partOfHour = (hour: number, { fromMinute, toMinute }: ActingWindow): number =>
  Math.max(0, Math.min(toMinute, 60 * hour + 60) - Math.max(fromMinute, 60 * hour)) / 60;

const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Share of a year's days that lie in the season. */
export const shareOfDays = (window: ActingWindow): number =>
  DAYS_IN_MONTH.reduce((sum, days, k) => sum + (isInSeason(k + 1, window) ? days : 0), 0) / 365;
