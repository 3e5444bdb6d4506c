import { monthFromName } from "./month-names";
import type { ZoneWords } from "./zone-words";

/** How a date is written: year first, two numbers and a year, month by name, or eight digits. */
export type DateForm = "ymd" | "numeric" | "named" | "compact";

/**
 * A date as read: `key` is year·10000 + first·100 + second, where first and second are month and day, or the two
 * numbers in the order written when `form` is "numeric".
 */
export type DateParts = { form: DateForm; separator: string; key: number };

/** A time of day in seconds (0-86400), how it was written, and the zone text behind it. */
export type TimeParts = { seconds: number; twelveHour: boolean; zoneText: string };

const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const NUMERIC = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})$/;
const DAY_NAMED = /^(\d{1,2})[-\s./]*([\p{L}]{3,9})[-\s.,/]*(\d{4}|\d{2})$/u;
const NAMED_DAY = /^([\p{L}]{3,9})\.?[\s-]+(\d{1,2})(?:st|nd|rd|th)?(?:,\s*|[\s-]+)(\d{4})$/u;
const COMPACT = /^(\d{4})(\d{2})(\d{2})$/;
const WEEKDAY = /^[\p{L}]{2,10}[.,]?\s+(?=\d|[\p{L}]{3,9}\.?\s+\d)/u;
const TIME =
  /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(?:\s*([AaPp])\.?\s?[Mm]\.?)?(?:\s*(Z|(?:UTC|GMT)?[+-]\d{1,2}(?::?\d{2})?|[A-Za-z]{2,5}))?$/;

const fullYear = (text: string): number =>
  text.length === 4 ? Number(text) : Number(text) < 70 ? 2000 + Number(text) : 1900 + Number(text);

/** Reads a date alone, or null. Whether the day fits its month is checked once the order is known. */
export function readDate(text: string): DateParts | null {
  let match = YEAR_FIRST.exec(text);
  if (match) return dated("ymd", match[2] as string, Number(match[1]), Number(match[3]), Number(match[4]));
  match = NUMERIC.exec(text);
  if (match) {
    const [first, second] = [Number(match[1]), Number(match[3])];
    if (first < 1 || second < 1 || first > 31 || second > 31 || (first > 12 && second > 12)) return null;
    return {
      form: "numeric",
      separator: match[2] as string,
      key: fullYear(match[4] as string) * 10000 + first * 100 + second,
    };
  }
  match = COMPACT.exec(text);
  if (match) return dated("compact", "", Number(match[1]), Number(match[2]), Number(match[3]));
  return readNamed(text) ?? readNamed(text.replace(WEEKDAY, ""));
}

/** `06-Jul-26`, `6. Juli 2026`, `Jul 6, 2026`. */
function readNamed(text: string): DateParts | null {
  const dayFirst = DAY_NAMED.exec(text);
  const monthFirst = dayFirst ? null : NAMED_DAY.exec(text);
  const [name, day, year] = dayFirst
    ? [dayFirst[2], dayFirst[1], dayFirst[3]]
    : monthFirst
      ? [monthFirst[1], monthFirst[2], monthFirst[3]]
      : [];
  const month = name === undefined ? null : monthFromName(name);
  return month && year ? dated("named", "", fullYear(year), month, Number(day)) : null;
}

function dated(form: DateForm, separator: string, year: number, month: number, day: number): DateParts | null {
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month) || year < 1970 || year > 2100) return null;
  return { form, separator, key: year * 10000 + month * 100 + day };
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/** Reads a time of day, or null. 24:00 is the end of the day; 12 AM is 0 h and 12 PM is 12 h. */
export function readTime(text: string): TimeParts | null {
  const match = TIME.exec(text);
  if (!match) return null;
  let hour = Number(match[1]);
  const minute = Number(match[2]);
  const second = Number(match[3] ?? 0) + (match[4] ? Number(`0.${match[4]}`) : 0);
  if (minute > 59 || second >= 60) return null;
  const half = match[5]?.toLowerCase();
  if (half) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (half === "p" ? 12 : 0);
  }
  const seconds = hour * 3600 + minute * 60 + second;
  if (seconds > 86400) return null;
  return { seconds, twelveHour: half !== undefined, zoneText: match[6] ?? "" };
}

/** Where the time of day begins in a stamp of date and time, or -1 when there is none. */
export function timeStart(stamp: string): number {
  const colon = stamp.indexOf(":");
  if (colon < 1) return -1;
  let start = colon;
  while (start > 0 && start > colon - 2 && isDigit(stamp.charCodeAt(start - 1))) start--;
  return start === colon ? -1 : start;
}

const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** Offset in seconds of a zone text: `Z`, `+02:00`, `-0500`, `UTC+1`, or one of the words given; null when unknown. */
export function readOffset(text: string, words: ZoneWords): number | null {
  const match = /^(?:UTC|GMT)?([+-])(\d{1,2})(?::?(\d{2}))?$/i.exec(text);
  if (match) {
    const seconds = Number(match[2]) * 3600 + Number(match[3] ?? 0) * 60;
    return seconds > 15 * 3600 ? null : match[1] === "-" ? -seconds : seconds;
  }
  return words.get(text.toUpperCase()) ?? null;
}
