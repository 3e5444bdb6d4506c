import { endOf, type Rows, startOf } from "./rows";
import { readDate, readOffset, readTime, type TimeParts, timeStart } from "./stamp-parts";
import { StampTemplates } from "./stamp-template";
import type { ZoneWords } from "./zone-words";

/** Times of day remembered at a time. */
const MOST_TIMES = 100_000;

export const BLANK = 0;
export const READ = 1;
export const UNREADABLE = 2;
/** Readable but for a zone word that is none of the building's. */
export const FOREIGN_ZONE = 3;

/** Where the stamps of a table stand and how: one column of text, a date and a time column, or a column of numbers. */
export type TimeSource = TextSource | NumberSource;
type TextSource = { form: "text"; column: number } | { form: "date-and-time"; dateColumn: number; timeColumn: number };
type NumberSource = { form: "epoch-seconds" | "epoch-milliseconds" | "serial" | "elapsed-seconds"; column: number };

/** Stamps of every row of a table, in typed arrays by row. */
export type StampColumn = {
  status: Uint8Array;
  /** year·10000 + month·100 + day, or the two numbers as written (`numericDates`). */
  dateKey: Int32Array;
  secondOfDay: Float64Array;
  /** Offset east of UTC in seconds that the stamp itself states, or NaN. */
  offset: Float64Array;
  /** Index into `formats`. */
  format: Uint8Array;
  /** Format texts met, with the row of the first of each. */
  formats: { text: string; numeric: boolean; separator: string; firstRow: number; count: number }[];
  foreignWords: Set<string>;
  /** True when any stamp was filled down from the date of an earlier row. */
  filledDown: boolean;
};

/** What the stamps of rows cannot say themselves. */
export type StampContext = {
  /** The date that stood last above the rows, for those that leave it out. */
  dateBefore?: string;
  /** When seconds began to be counted, where they are [UTC seconds]. */
  startUtc?: number;
};

/** Reads the stamps of all rows. */
export function readStampColumn(
  rows: Rows,
  source: TimeSource,
  words: ZoneWords,
  { dateBefore = "", startUtc = 0 }: StampContext = {},
): StampColumn {
  const n = rows.count;
  const column: StampColumn = {
    status: new Uint8Array(n),
    dateKey: new Int32Array(n),
    secondOfDay: new Float64Array(n),
    offset: new Float64Array(n).fill(Number.NaN),
    format: new Uint8Array(n),
    formats: [],
    foreignWords: new Set(),
    filledDown: false,
  };
  if (source.form === "text" || source.form === "date-and-time") readTexts(rows, source, words, dateBefore, column);
  else readNumbers(rows, source, startUtc, column);
  return column;
}

type DateEntry = { key: number; signature: string; numeric: boolean; separator: string };

function readTexts(rows: Rows, source: TextSource, words: ZoneWords, dateBefore: string, out: StampColumn): void {
  let carried = dateBefore;
  const dates = new Map<string, DateEntry | null>();
  const formatIndex = new Map<string, number>();
  const offsets = new Map<string, number | null>();
  const times = new Map<string, TimeParts | null>();
  const templates = new StampTemplates();
  const { fields } = rows;
  for (let row = 0; row < rows.count; row++) {
    const field = source.form === "text" && !fields.apart.has(row) ? fieldOf(fields, row, source.column) : -1;
    if (field >= 0 && templates.matches(fields.bytes, startOf(fields, field), endOf(fields, field))) {
      copyStamp(out, templates.mark, row, templates.seconds);
      continue;
    }
    let dateText: string;
    let timeText: string;
    if (source.form === "text") {
      const stamp = cleanStamp(rows.cell(row, source.column));
      if (stamp === "") continue;
      const start = timeStart(stamp);
      dateText = start < 0 ? stamp : trimJoint(stamp.slice(0, start));
      timeText = start < 0 ? "" : stamp.slice(start);
    } else {
      dateText = cleanStamp(rows.cell(row, source.dateColumn));
      timeText = cleanStamp(rows.cell(row, source.timeColumn));
      if (dateText === "" && timeText === "") continue;
      if (dateText === "") {
        dateText = carried;
        out.filledDown = true;
      }
      // Some systems write a midnight beside each date of a column that has the time elsewhere.
      if (dateText.endsWith("00:00:00")) dateText = trimJoint(dateText.slice(0, -8));
    }
    out.status[row] = UNREADABLE;
    let entry = dates.get(dateText);
    if (entry === undefined) {
      const parts = readDate(dateText);
      entry = parts && {
        key: parts.key,
        signature: parts.form + parts.separator,
        numeric: parts.form === "numeric",
        separator: parts.separator,
      };
      dates.set(dateText, entry);
    }
    if (!entry) continue;
    if (source.form === "date-and-time") carried = dateText;
    let time = timeText === "" ? null : times.get(timeText);
    if (time === undefined) {
      if (times.size >= MOST_TIMES) times.clear();
      time = readTime(timeText);
      times.set(timeText, time);
    }
    if (timeText !== "" && !time) continue;
    if (source.form === "date-and-time" && !time) continue;
    out.dateKey[row] = entry.key;
    out.secondOfDay[row] = time?.seconds ?? 0;
    let hasZone = false;
    if (time && time.zoneText !== "") {
      let offset = offsets.get(time.zoneText);
      if (offset === undefined) {
        offset = readOffset(time.zoneText, words);
        offsets.set(time.zoneText, offset);
      }
      if (offset === null) {
        out.status[row] = FOREIGN_ZONE;
        out.foreignWords.add(time.zoneText);
        continue;
      }
      out.offset[row] = offset;
      hasZone = true;
    }
    out.status[row] = READ;
    const format = stampForm(entry.signature, time, hasZone);
    let index = formatIndex.get(format);
    if (index === undefined) {
      index = out.formats.length;
      formatIndex.set(format, index);
      out.formats.push({ text: format, numeric: entry.numeric, separator: entry.separator, firstRow: row, count: 0 });
    }
    out.format[row] = index;
    (out.formats[index] as { count: number }).count++;
    if (field >= 0) templates.learn(fields.bytes, startOf(fields, field), endOf(fields, field), row);
  }
}

/** How a stamp is written, in words. */
export const stampForm = (dateSignature: string, time: TimeParts | null, hasZone: boolean): string =>
  `${dateSignature}${time ? (time.twelveHour ? " 12 h" : " 24 h") : " date only"}${hasZone ? " zone" : ""}`;

/** A stamp of the same date and form as an earlier one. */
function copyStamp(out: StampColumn, model: number, row: number, seconds: number): void {
  const format = out.format[model] as number;
  out.status[row] = READ;
  out.dateKey[row] = out.dateKey[model] as number;
  out.secondOfDay[row] = seconds;
  out.offset[row] = out.offset[model] as number;
  out.format[row] = format;
  (out.formats[format] as { count: number }).count++;
}

/** Index of a field of a row kept as bytes, or -1 when the row has none there. */
function fieldOf({ rowFirst }: Rows["fields"], row: number, column: number): number {
  const field = (rowFirst[row] as number) + column;
  return field + 1 < (rowFirst[row + 1] as number) ? field : -1;
}

function readNumbers(rows: Rows, source: NumberSource, startUtc: number, out: StampColumn): void {
  out.formats.push({ text: source.form, numeric: false, separator: "", firstRow: 0, count: 0 });
  for (let row = 0; row < rows.count; row++) {
    const text = rows.cell(row, source.column).trim().replace(",", ".");
    if (text === "") continue;
    out.status[row] = UNREADABLE;
    if (!/^\d+(\.\d+)?$/.test(text)) continue;
    const seconds = secondsFromNumber(Number(text), source.form);
    if (seconds === null) continue;
    // Whole days go to the key as days since 1970, marked by staying under any year·10000.
    const days = Math.floor(seconds / 86400);
    out.dateKey[row] = days;
    out.secondOfDay[row] = seconds - days * 86400;
    if (source.form === "elapsed-seconds") out.offset[row] = -startUtc;
    else if (source.form !== "serial") out.offset[row] = 0;
    out.status[row] = READ;
    (out.formats[0] as { count: number }).count++;
  }
}

/**
 * Seconds since 1970 of an epoch number, or local seconds of a spreadsheet serial (days since 1899-12-30, to the second).
 * Seconds that have run are taken to the second.
 */
export function secondsFromNumber(value: number, form: NumberSource["form"]): number | null {
  if (form === "elapsed-seconds") return Math.round(value);
  if (form === "epoch-milliseconds") return value >= 1e11 && value < 4.2e12 ? value / 1000 : null;
  if (form === "epoch-seconds") return value >= 1e8 && value < 4.2e9 ? value : null;
  return value >= 25569 && value < 73051 ? Math.round((value - 25569) * 86400) : null;
}

/** Trims, and reads the hard and narrow spaces that some locales put before AM as plain ones. */
export function cleanStamp(text: string): string {
  const trimmed = text.trim();
  return /[\u00a0\u202f]/.test(trimmed) ? trimmed.replace(/[\u00a0\u202f]/g, " ") : trimmed;
}

export const trimJoint = (text: string): string => text.replace(/[T,\s]+$/, "").replace(/\s+-$/, "");
