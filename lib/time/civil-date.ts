/** A calendar date as `YYYY-MM-DD`, with no clock and no zone. */
export type LocalDate = string;

/** Days since 1970-01-01 of a proleptic Gregorian date (month 1-12). */
export function dayNumber(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

/** Year, month (1-12) and day of a day number. */
export function civilFromDayNumber(days: number): { year: number; month: number; day: number } {
  const shifted = days + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** ISO weekday of a day number: 1 Monday to 7 Sunday. */
export const isoWeekday = (days: number): number => ((((days + 3) % 7) + 7) % 7) + 1;

export function localDateFromDayNumber(days: number): LocalDate {
  const { year, month, day } = civilFromDayNumber(days);
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** Day number of a `YYYY-MM-DD`, or null when it is not a date of the calendar. */
export function dayNumberFromLocalDate(date: LocalDate): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return null;
  const days = dayNumber(Number(match[1]), Number(match[2]), Number(match[3]));
  return localDateFromDayNumber(days) === date ? days : null;
}
