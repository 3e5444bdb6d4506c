import { areElapsedSeconds } from "./elapsed-seconds";
import { isTimeHeading } from "./heading-words";
import type { Rows } from "./rows";
import { secondsFromNumber, type TimeSource } from "./stamp-column";
import { readDate, readTime, timeStart } from "./stamp-parts";

type CellForm = "stamp" | "date" | "time" | null;
const SAMPLE_ROWS = 600;
const MOST_COLUMNS = 2000;
/** Common practice, no source: the longest interval that logs are kept at, a month. */
const MOST_DAYS_APART = 31;

/** What a spreadsheet leaves of a date: hashes for a narrow column, or minutes and tenths of a second ("15:00.0"). */
const DESTROYED = /^(?:#{3,}|\d{1,2}:\d{2}\.\d)$/;

/** What one cell looks like on its own: a date with a time, a date, a time of day, or none of these. */
export function cellForm(text: string): CellForm {
  const cell = text.trim().replace(/[\u00a0\u202f]/g, " ");
  if (cell.length < 4 || cell.length > 48) return null;
  // No date is as short as most numbers are.
  if (cell.length < 6 && !cell.includes(":")) return null;
  const start = timeStart(cell);
  if (start < 0) return readDate(cell) ? "date" : null;
  if (!readTime(cell.slice(start))) return null;
  if (start === 0) return "time";
  return readDate(
    cell
      .slice(0, start)
      .replace(/[T,\s]+$/, "")
      .replace(/\s+-$/, ""),
  )
    ? "stamp"
    : null;
}

export type TimeColumns =
  | { status: "found"; sources: TimeSource[] }
  | { status: "dates-destroyed"; rows: number[] }
  | { status: "times-without-dates" }
  | { status: "none" };

/**
 * Columns that hold the stamps of a table: columns of date and time (all of them, from left to right), else a date
 * and a time column, else dates alone, else numbers under a heading that says time.
 */
export function findTimeColumns(rows: Rows): TimeColumns {
  const sample = sampleRows(rows.count);
  const counts = new Map<number, { stamp: number; date: number; time: number; hashes: number }>();
  for (const row of sample) {
    const cells = rows.cellsOf(row);
    if (cells.length < 2) continue;
    for (let column = 0; column < Math.min(cells.length, MOST_COLUMNS); column++) {
      const text = cells[column] as string;
      if (text.length < 3) continue;
      const form = cellForm(text);
      const hash = DESTROYED.test(text.trim());
      if (!form && !hash) continue;
      let count = counts.get(column);
      if (!count) {
        count = { stamp: 0, date: 0, time: 0, hashes: 0 };
        counts.set(column, count);
      }
      if (form) count[form]++;
      if (hash) count.hashes++;
    }
  }
  const columns = [...counts].sort(([a], [b]) => a - b);
  const most = (what: "stamp" | "date" | "time" | "hashes"): number => Math.max(0, ...columns.map(([, c]) => c[what]));
  const stamps = most("stamp");
  const hashes = most("hashes");
  if (hashes > stamps && hashes > most("date") && hashes * 2 >= sample.length - 12) {
    const column = columns.find(([, c]) => c.hashes === hashes)?.[0] ?? 0;
    return {
      status: "dates-destroyed",
      rows: sample.filter((row) => DESTROYED.test(rows.cell(row, column).trim())),
    };
  }
  if (stamps > 0 && stamps >= Math.min(most("date"), most("time"))) {
    const enough = Math.max(1, Math.min(2, stamps));
    const sources = columns
      .filter(([, c]) => c.stamp >= enough && c.stamp >= c.date)
      .map(([column]) => ({ form: "text", column }) as const);
    return { status: "found", sources };
  }
  const dateColumn = columns.find(([, c]) => c.date > 0 && c.date >= c.time);
  const timeColumn = columns.find(([column, c]) => c.time > 0 && c.time === most("time") && column !== dateColumn?.[0]);
  if (dateColumn && timeColumn) {
    return {
      status: "found",
      sources: [{ form: "date-and-time", dateColumn: dateColumn[0], timeColumn: timeColumn[0] }],
    };
  }
  if (dateColumn) return { status: "found", sources: [{ form: "text", column: dateColumn[0] }] };
  const numeric = numberColumn(rows, sample);
  if (numeric) return { status: "found", sources: [numeric] };
  return timeColumn ? { status: "times-without-dates" } : { status: "none" };
}

/** A column of epoch numbers, spreadsheet serials or seconds that have run, believed only under a heading that says time. */
function numberColumn(rows: Rows, sample: readonly number[]): TimeSource | null {
  for (const row of sample.slice(0, 100)) {
    const headings = rows.cellsOf(row);
    for (let column = 0; column < headings.length; column++) {
      if (!isTimeHeading(headings[column] as string)) continue;
      const values = sample
        .filter((other) => other > row)
        .map((other) => rows.cell(other, column).trim().replace(",", "."))
        .filter((text) => text !== "");
      for (const form of ["epoch-milliseconds", "epoch-seconds", "serial"] as const) {
        const fitting = values.filter(
          (text) => /^\d+(\.\d+)?$/.test(text) && secondsFromNumber(Number(text), form) !== null,
        );
        if (fitting.length === 0 || fitting.length < 0.8 * values.length) continue;
        if (form !== "serial" || areDaysApart(fitting)) return { form, column };
      }
      if (areElapsedSeconds(headings[column] as string, values)) return { form: "elapsed-seconds", column };
    }
  }
  return null;
}

/**
 * Whether serials lie as a log's do: mostly a month apart at most. Seconds that have run since a start may be numbers of
 * the same size, but those of a log that is written once a minute would be two months apart as days.
 */
function areDaysApart(serials: readonly string[]): boolean {
  const near = serials.filter((text, i) => i > 0 && Math.abs(Number(text) - Number(serials[i - 1])) <= MOST_DAYS_APART);
  return 2 * near.length >= serials.length - 1;
}

/** The first rows, and as many again spread over the rest. */
function sampleRows(count: number): number[] {
  if (count <= 2 * SAMPLE_ROWS) return Array.from({ length: count }, (_, i) => i);
  const stride = (count - SAMPLE_ROWS) / SAMPLE_ROWS;
  return Array.from({ length: 2 * SAMPLE_ROWS }, (_, i) =>
    i < SAMPLE_ROWS ? i : Math.floor(SAMPLE_ROWS + (i - SAMPLE_ROWS) * stride),
  );
}
