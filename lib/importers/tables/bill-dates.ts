import { dayNumber, dayNumberFromLocalDate, type LocalDate, localDateFromDayNumber } from "@/lib/time/civil-date";

export type DateOrder = "mdy" | "dmy";

const SLASHED = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4})$/;

/** Order of day and month in a column of dates such as 3/15/2025: what a number above 12 shows; null when none does. */
export function dateOrderOf(texts: readonly string[]): DateOrder | null {
  const parts = texts.flatMap((text) => {
    const match = SLASHED.exec(text);
    return match ? [[Number(match[1]), Number(match[2])] as const] : [];
  });
  const [first, second] = [parts.some(([a]) => a > 12), parts.some(([, b]) => b > 12)];
  if (first === second) return null;
  return second ? "mdy" : "dmy";
}

/** A date as a day number, or what is wrong with it. */
export function billDay(text: string, order: DateOrder | null): { day: number } | { fault: string } {
  const iso = dayNumberFromLocalDate(text);
  if (iso !== null) return { day: iso };
  const match = SLASHED.exec(text);
  if (!match) return { fault: `"${text}" is no date; write it as 2025-03-15` };
  if (order === null)
    return { fault: `"${text}" may be read in two ways, and no date of the file tells which; write it as 2025-03-15` };
  const [a, b, year] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const [month, day] = order === "mdy" ? [a, b] : [b, a];
  const date = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  const found = dayNumberFromLocalDate(date);
  return found === null ? { fault: `"${text}" is not in the calendar` } : { day: found };
}

/** First days of a month such as `2025-03` and of the next one; null for anything else. */
export function billMonth(text: string): { from: number; until: number } | null {
  const match = /^(\d{4})-(\d{1,2})$/.exec(text);
  const [year, month] = [Number(match?.[1]), Number(match?.[2])];
  if (!match || month < 1 || month > 12) return null;
  return {
    from: dayNumber(year, month, 1),
    until: month === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, month + 1, 1),
  };
}

export const dateOf = (day: number): LocalDate => localDateFromDayNumber(day);
