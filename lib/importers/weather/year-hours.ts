/** Hours of a year without a leap day: the length of every weather year kept. */
export const HOURS_IN_WEATHER_YEAR = 8760;

const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;
export const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const MONTH_NAMES = "January February March April May June July August September October November December".split(" ");

/** Index in the weather year of the hour that ends at `hour`:00 (1-24) of a day, or null when there is no such hour. */
export function hourIndex({ month, day, hour }: { month: number; day: number; hour: number }): number | null {
  const before = DAYS_BEFORE_MONTH[month - 1];
  const days = DAYS_IN_MONTH[month - 1];
  if (before === undefined || days === undefined) return null;
  if (!Number.isInteger(day) || day < 1 || day > days) return null;
  if (!Number.isInteger(hour) || hour < 1 || hour > 24) return null;
  return (before + day - 1) * 24 + hour - 1;
}

/** `14 March, hour ending 02:00`, for an index of the weather year. */
export function hourName(index: number): string {
  const dayOfYear = Math.floor(index / 24);
  let month = 11;
  while (month > 0 && (DAYS_BEFORE_MONTH[month] ?? 0) > dayOfYear) month--;
  const day = dayOfYear - (DAYS_BEFORE_MONTH[month] ?? 0) + 1;
  const hour = (index % 24) + 1;
  return `${day} ${MONTH_NAMES[month]}, hour ending ${String(hour).padStart(2, "0")}:00`;
}
