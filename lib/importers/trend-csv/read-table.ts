import { type ZoneTable, zoneTable } from "@/lib/time/zone-table";
import { rowsToTake } from "./cut-rows";
import { type DateTally, dayOfKey, gatherDates, inferDateOrder, type OrderVerdict } from "./date-order";
import { readTimeStart } from "./elapsed-seconds";
import * as refusals from "./refusals";
import type { Rows } from "./rows";
import { findSections, type Section } from "./sections";
import { FOREIGN_ZONE, READ, readStampColumn, type StampColumn, type TimeSource, UNREADABLE } from "./stamp-column";
import { findTimeColumns } from "./time-source";
import type { DateOrder, TrendRefusal } from "./trend-file";
import { zoneWords } from "./zone-words";

/** The stamps of one time source over the whole file, with the wall clock worked out where the order is known. */
export type Clock = { source: TimeSource; stamps: StampColumn; local: Float64Array; newestFirst: boolean };

export type Skeleton = {
  sections: Section[];
  clocks: Clock[];
  order: OrderVerdict;
  /** Order used for `local`: as answered, inferred, or a stand-in while it is unknown. */
  orderUsed: DateOrder;
  zone: ZoneTable;
};

/** What the parts of a file before this one have settled for it. */
export type TimeContinuation = {
  sources: readonly TimeSource[];
  /** The date that stood last, by source. */
  datesBefore: readonly string[];
};

export type SkeletonInput = {
  rows: Rows;
  timeZone: string;
  answeredOrder: DateOrder | undefined;
  /** When seconds began to be counted, where a table counts them: on the building's clock, as answered. */
  answeredStart: string | undefined;
  /** Order of the whole file, when it is known. */
  knownOrder: OrderVerdict | undefined;
  /** Dates of the file so far; those of these rows are added. */
  dates: DateTally;
  continued: TimeContinuation | null;
  isLast: boolean;
};

/**
 * Finds stamps, tables and the order of day and month; a refusal when any of them is past reading. Of a part that is not
 * the last, the rows that cannot be read without the next one are dropped from `rows`.
 */
export function readSkeleton(
  input: SkeletonInput,
): { status: "ok"; skeleton: Skeleton } | { status: "refused"; refusal: TrendRefusal } | { status: "too-short" } {
  const refused = (refusal: TrendRefusal) => ({ status: "refused", refusal }) as const;
  const { rows, timeZone, continued } = input;
  const found = continued ? ({ status: "found", sources: continued.sources } as const) : findTimeColumns(rows);
  if (found.status === "dates-destroyed")
    return refused(refusals.datesDestroyed(found.rows.map((row) => rows.lines[row] as number)));
  if (found.status === "times-without-dates") return refused(refusals.timesWithoutDates());
  if (found.status === "none") return refused(refusals.withoutStamps(rows));

  const zone = zoneTable(timeZone);
  const words = zoneWords(timeZone);
  const startUtc = readTimeStart(input.answeredStart ?? "", zone) ?? undefined;
  const columns = found.sources.map((source, i) =>
    readStampColumn(rows, source, words, { dateBefore: continued?.datesBefore[i], startUtc }),
  );
  const first = columns[0] as StampColumn;
  const sections = findSections(rows, first.status, dateColumnOf(found.sources[0] as TimeSource), {
    isContinued: continued !== null,
  });
  if (sections.length === 0) return refused(refusals.withoutStamps(rows));

  const foreign = new Set(columns.flatMap((column) => [...column.foreignWords]));
  if (foreign.size > 0 && !first.status.includes(READ)) return refused(refusals.foreignZone([...foreign], timeZone));
  for (const column of columns) {
    keepToSections(column, sections);
    const mixed = mixedFormats(column, rows);
    if (mixed) return refused(mixed);
  }
  gatherDates(columns, rows.lines, input.dates);
  const order = input.knownOrder ?? inferDateOrder(input.dates);
  if (order.status === "contradictory")
    return refused(
      refusals.mixedFormats(
        [...order.lines].sort((a, b) => a - b),
        true,
      ),
    );
  const orderUsed = order.status === "known" ? order.order : (input.answeredOrder ?? "mdy");
  const clocks = columns.map((stamps, i) => makeClock(found.sources[i] as TimeSource, stamps, orderUsed));
  if (!input.isLast) {
    const take = rowsToTake(rows.count, clocks, zone);
    if (take === 0) return { status: "too-short" };
    rows.keepFirst(take);
    dropBeyond(sections, rows.count);
  }
  return { status: "ok", skeleton: { sections, clocks, order, orderUsed, zone } };
}

export const dateColumnOf = (source: TimeSource): number =>
  source.form === "date-and-time" ? source.dateColumn : source.column;

/** Keeps to the tables, or beginnings of tables, that stand within the first `count` rows. */
function dropBeyond(sections: Section[], count: number): void {
  while (sections.length > 1 && (sections.at(-1) as Section).dataFrom >= count) sections.pop();
  const last = sections.at(-1) as Section;
  last.dataTo = Math.min(last.dataTo, count);
}

/** What the next part has to know of the stamps of this one. */
export function continueTimes(rows: Rows, { clocks }: Skeleton, before: TimeContinuation | null): TimeContinuation {
  const datesBefore = clocks.map(({ source }, i) => {
    if (source.form !== "date-and-time") return "";
    for (let row = rows.count - 1; row >= 0; row--) {
      const text = rows.cell(row, source.dateColumn).trim();
      if (text !== "") return text;
    }
    return before?.datesBefore[i] ?? "";
  });
  return { sources: clocks.map(({ source }) => source), datesBefore };
}

/** A date in the lines above a heading is no stamp of the table. */
function keepToSections(column: StampColumn, sections: readonly Section[]): void {
  let from = 0;
  for (const section of sections) {
    column.status.fill(0, from, section.dataFrom);
    from = section.dataTo;
  }
  for (const format of column.formats) {
    format.count = 0;
    format.firstRow = -1;
  }
  for (let row = 0; row < column.status.length; row++) {
    if (column.status[row] !== READ) continue;
    const format = column.formats[column.format[row] as number];
    if (!format) continue;
    if (format.firstRow < 0) format.firstRow = row;
    format.count++;
  }
}

function mixedFormats(column: StampColumn, rows: Rows): TrendRefusal | null {
  const used = column.formats.filter((format) => format.count > 0);
  if (used.length < 2) return null;
  const timed = used.filter((format) => !format.text.includes("date only"));
  if (timed.length > 0) {
    for (let row = 0; row < column.status.length; row++) {
      const format = column.formats[column.format[row] as number];
      if (column.status[row] !== READ || !format?.text.includes("date only")) continue;
      if (!isMidnight(column, row, rows)) column.status[row] = UNREADABLE;
    }
  }
  if (timed.length === 1) return null;
  const starts = (timed.length > 0 ? timed : used)
    .map((format) => rows.lines[format.firstRow] as number)
    .sort((a, b) => a - b);
  return refusals.mixedFormats(starts.slice(1), false);
}

/**
 * Whether a date without a time, among stamps that have one, is the midnight that some exports leave off: it stands
 * where its day begins. Elsewhere it is a damaged row.
 */
function isMidnight(column: StampColumn, row: number, rows: Rows): boolean {
  if (row === rows.count - 1 && !rows.endsWithLineEnd) return false;
  const neighbour = (step: 1 | -1): number | null => {
    let at = row + step;
    while (at >= 0 && at < column.status.length && column.status[at] !== READ) at += step;
    return at >= 0 && at < column.status.length ? (column.dateKey[at] as number) : null;
  };
  const own = column.dateKey[row] as number;
  return (neighbour(1) === own) !== (neighbour(-1) === own);
}

const DAY = 86400;

function makeClock(source: TimeSource, stamps: StampColumn, order: DateOrder): Clock {
  const n = stamps.status.length;
  const local = new Float64Array(n).fill(Number.NaN);
  let lastKey = -1;
  let lastNumeric: boolean | undefined;
  let lastDay: number | null = null;
  let forward = 0;
  let backward = 0;
  let previous = Number.NaN;
  for (let row = 0; row < n; row++) {
    if (stamps.status[row] !== READ) continue;
    const key = stamps.dateKey[row] as number;
    const numeric = stamps.formats[stamps.format[row] as number]?.numeric === true;
    if (key !== lastKey || numeric !== lastNumeric) {
      // Keys of epoch numbers and serials are days since 1970 already.
      lastDay = key < 1_000_000 ? key : dayOfKey(key, numeric ? order : "written");
      lastKey = key;
      lastNumeric = numeric;
    }
    if (lastDay === null) {
      stamps.status[row] = UNREADABLE;
      continue;
    }
    const at = lastDay * DAY + (stamps.secondOfDay[row] as number);
    local[row] = at;
    if (at > previous) forward++;
    else if (at < previous) backward++;
    previous = at;
  }
  return { source, stamps, local, newestFirst: backward > forward };
}

export const isUnread = (status: number | undefined): boolean => status === UNREADABLE || status === FOREIGN_ZONE;
