import type { ActingWindow } from "./acting-window";

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** "May" of 5. */
export const monthName = (month: number): string => MONTHS[month - 1] ?? String(month);

/** "May to September", "July". */
export function seasonWords(season: Pick<ActingWindow, "seasonFromMonth" | "seasonToMonth">): string {
  const [from, to] = [monthName(season.seasonFromMonth), monthName(season.seasonToMonth)];
  return from === to ? from : `${from} to ${to}`;
}

/** "07:00" of 420. */
export const clockOf = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;

/** "08:00 to 18:00". */
export const hoursWords = ({ fromMinute, toMinute }: Pick<ActingWindow, "fromMinute" | "toMinute">): string =>
  `${clockOf(fromMinute)} to ${clockOf(toMinute)}`;
