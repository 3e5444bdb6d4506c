import { dayNumber } from "@/lib/time/civil-date";
import { READ, type StampColumn } from "./stamp-column";
import { daysInMonth } from "./stamp-parts";
import type { DateOrder } from "./trend-file";

export type OrderVerdict =
  | { status: "not-needed" }
  | { status: "known"; order: DateOrder; evidence: string }
  | { status: "unknown" }
  /** Some stamps are possible only month first and others only day first. */
  | { status: "contradictory"; lines: number[] };

const DAY = 86400;

/** The dates of a file written as two numbers and a year, as far as it has been read. */
export type DateTally = {
  /** By the numbers as written: first and last second of the day, and the line that has the date first. */
  dates: Map<number, { first: number; last: number; line: number }>;
  dots: boolean;
  longestStep: number;
};

export const noDates = (): DateTally => ({ dates: new Map(), dots: false, longestStep: 0 });

/** Adds the dates of stamp columns; `lines` are the physical lines of their rows. */
export function gatherDates(columns: readonly StampColumn[], lines: Int32Array, tally: DateTally): void {
  for (const column of columns) {
    if (!column.formats.some((format) => format.numeric)) continue;
    let lastKey = -1;
    let lastSecond = 0;
    let known: { first: number; last: number } | undefined;
    for (let row = 0; row < column.status.length; row++) {
      if (column.status[row] !== READ) continue;
      const format = column.formats[column.format[row] as number];
      if (!format?.numeric) continue;
      if (format.separator === ".") tally.dots = true;
      const key = column.dateKey[row] as number;
      const second = column.secondOfDay[row] as number;
      if (key === lastKey) tally.longestStep = Math.max(tally.longestStep, Math.abs(second - lastSecond));
      else known = tally.dates.get(key);
      lastKey = key;
      lastSecond = second;
      if (!known) {
        known = { first: second, last: second };
        tally.dates.set(key, Object.assign(known, { line: lines[row] as number }));
      } else if (second < known.first) known.first = second;
      else if (second > known.last) known.last = second;
    }
  }
}

/**
 * The order of day and month for stamps written as two numbers and a year: dots, a number above 12, or the order
 * that alone lets the rows run on from day to day. Never the country.
 */
export function inferDateOrder({ dates, dots, longestStep }: DateTally): OrderVerdict {
  if (dates.size === 0) return { status: "not-needed" };

  let dayFirstLine = -1;
  let monthFirstLine = -1;
  for (const [key, { line }] of dates) {
    const { first, second } = numbersOf(key);
    if (first > 12 && dayFirstLine < 0) dayFirstLine = line;
    if (second > 12 && monthFirstLine < 0) monthFirstLine = line;
  }
  if (dayFirstLine >= 0 && monthFirstLine >= 0)
    return { status: "contradictory", lines: [dayFirstLine, monthFirstLine] };
  if (dots && monthFirstLine < 0)
    return { status: "known", order: "dmy", evidence: "dots between day, month and year" };
  if (dayFirstLine >= 0) return { status: "known", order: "dmy", evidence: "a first number above 12" };
  if (monthFirstLine >= 0) return { status: "known", order: "mdy", evidence: "a second number above 12" };
  return byContinuity(dates, longestStep);
}

export const numbersOf = (key: number): { year: number; first: number; second: number } => ({
  year: Math.floor(key / 10000),
  first: Math.floor(key / 100) % 100,
  second: key % 100,
});

/** Day number of a date key under an order, or null when that month has no such day. */
export function dayOfKey(key: number, order: DateOrder | "written"): number | null {
  const { year, first, second } = numbersOf(key);
  const month = order === "dmy" ? second : first;
  const day = order === "dmy" ? first : second;
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return dayNumber(year, month, day);
}

function byContinuity(dates: Map<number, { first: number; last: number }>, longestStep: number): OrderVerdict {
  if (dates.size < 2) return { status: "unknown" };
  const steps = { mdy: dayChanges(dates, "mdy"), dmy: dayChanges(dates, "dmy") };
  if (!steps.mdy || !steps.dmy) return { status: "unknown" };
  const usual = longestStep > 0 ? longestStep * 1.5 : null;
  const runsOn = (order: DateOrder): boolean => {
    const changes = steps[order] as number[];
    if (usual !== null) return changes.every((step) => step <= usual);
    // One row a day: regular when at least three steps are all alike.
    return changes.length >= 3 && changes.every((step) => step === changes[0]);
  };
  const [mdy, dmy] = [runsOn("mdy"), runsOn("dmy")];
  if (mdy !== dmy) return { status: "known", order: mdy ? "mdy" : "dmy", evidence: "a regular step only one way" };
  // Logs with nights or days left out: days that follow each other in one order lie months apart in the other.
  const closeTogether = (order: DateOrder): boolean => (steps[order] as number[]).every((step) => step <= 4 * DAY);
  const monthsApart = (order: DateOrder): boolean => (steps[order] as number[]).every((step) => step >= 25 * DAY);
  if (dates.size >= 3) {
    if (closeTogether("mdy") && monthsApart("dmy"))
      return { status: "known", order: "mdy", evidence: "days that follow each other only one way" };
    if (closeTogether("dmy") && monthsApart("mdy"))
      return { status: "known", order: "dmy", evidence: "days that follow each other only one way" };
  }
  return mostlyRunsOn(steps as Record<DateOrder, number[]>, usual);
}

/** A few gaps must not hide the answer: most day changes run on in one order and next to none in the other. */
function mostlyRunsOn(steps: Record<DateOrder, number[]>, usual: number | null): OrderVerdict {
  if (usual === null) return { status: "unknown" };
  const share = (order: DateOrder): number => steps[order].filter((step) => step <= usual).length / steps[order].length;
  const [mdy, dmy] = [share("mdy"), share("dmy")];
  if (steps.mdy.length < 5) return { status: "unknown" };
  if (mdy >= 0.6 && dmy <= 0.1) return { status: "known", order: "mdy", evidence: "a regular step only one way" };
  if (dmy >= 0.6 && mdy <= 0.1) return { status: "known", order: "dmy", evidence: "a regular step only one way" };
  return { status: "unknown" };
}

/** Steps in seconds from the last stamp of each date to the first of the next, dates in their order of time. */
function dayChanges(dates: Map<number, { first: number; last: number }>, order: DateOrder): number[] | null {
  const days: { start: number; end: number }[] = [];
  for (const [key, { first, last }] of dates) {
    const day = dayOfKey(key, order);
    if (day === null) return null;
    days.push({ start: day * DAY + first, end: day * DAY + last });
  }
  days.sort((a, b) => a.start - b.start);
  return days.slice(1).map((day, i) => day.start - (days[i] as { end: number }).end);
}
