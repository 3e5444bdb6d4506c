import type { CellReader } from "./cell-reader";
import { collectGroup, type GroupInput, isHeldBack } from "./collect-group";
import { type Layout, readLayout, type ValueColumn } from "./layout";
import type { LineList } from "./line-list";
import type { PointDraft } from "./point-draft";
import { readPreamble } from "./preamble";
import { type Clock, isUnread, type Skeleton } from "./read-table";
import { columnsDoNotMatch } from "./refusals";
import { REPEATED, resolveLocal } from "./resolve-local";
import { HELD_BACK, type RowFates, UNREAD } from "./row-fates";
import type { Section } from "./sections";
import type { Rows } from "./split-rows";
import { READ, type TimeSource } from "./stamp-column";
import type { ClockRule, TrendAnswers, TrendRefusal } from "./trend-file";
import { readUnit } from "./units";

export type FileLists = Record<
  "event" | "unreadable" | "ambiguous" | "nonexistent" | "repeated" | "trailing",
  LineList
>;

export type FileContext = {
  rows: Rows;
  skeleton: Skeleton;
  fates: RowFates;
  reader: CellReader;
  answers: TrendAnswers;
  fileStem: string;
  lists: FileLists;
};

export type SectionReading = { layout: Layout; drafts: PointDraft[]; repeatedNames: Set<string> };

/** Reads one table: what its columns are, then the readings of its points. */
export function readSection(
  index: number,
  section: Section,
  context: FileContext,
): { status: "read"; reading: SectionReading } | { status: "refused"; refusal: TrendRefusal } {
  const { rows, skeleton } = context;
  const headings = section.headerRow >= 0 ? (rows.cells[section.headerRow] as string[]) : [];
  const width = headings.length > 0 ? headings.length : usualWidth(rows, section);
  const over = rejectWideRows(section, width, context);
  if (over) return { status: "refused", refusal: columnsDoNotMatch(over, width) };

  const above = section.headerRow > section.metaFrom ? (rows.cells[section.headerRow - 1] as string[]) : null;
  const sampled = sampleOf(section);
  const layout = readLayout({
    headings,
    units: section.unitsRow >= 0 ? (rows.cells[section.unitsRow] as string[]) : null,
    above,
    preamble: readPreamble(rows.cells.slice(section.metaFrom, Math.max(section.metaFrom, section.headerRow)), headings),
    sources: skeleton.clocks.map((clock) => clock.source).filter((source) => columnOf(source) < width),
    width,
    fileStem: context.fileStem,
    sample: (column) => sampled.map((row) => rows.cells[row]?.[column] ?? ""),
    isWhollyBlank: (column) => {
      for (let row = section.dataFrom; row < section.dataTo; row++)
        if ((rows.cells[row]?.[column] ?? "").trim() !== "") return false;
      return true;
    },
  });
  if (layout.statistics) chooseStatistic(layout, context.answers);
  const repeatedNames = tellApart(layout);
  const drafts = layout.long ? readLong(index, section, layout, context) : readColumns(index, section, layout, context);
  return { status: "read", reading: { layout, drafts, repeatedNames } };
}

const columnOf = (source: TimeSource): number => (source.form === "date-and-time" ? source.dateColumn : source.column);

function usualWidth(rows: Rows, section: Section): number {
  let width = 0;
  for (let row = section.dataFrom; row < Math.min(section.dataTo, section.dataFrom + 200); row++) {
    width = Math.max(width, (rows.cells[row] as string[]).length);
  }
  return width;
}

/** Rows with more fields than headings cannot be trusted; when they are most rows, the line of the first. */
function rejectWideRows(section: Section, width: number, { rows, skeleton, fates, lists }: FileContext): number | null {
  const status = (skeleton.clocks[0] as Clock).stamps.status;
  const found: number[] = [];
  let readable = 0;
  for (let row = section.dataFrom; row < section.dataTo; row++) {
    if (status[row] !== READ) continue;
    readable++;
    const cells = rows.cells[row] as string[];
    if (rows.malformed.has(row) || cells.slice(width).some((cell) => cell.trim() !== "") || isCutOff(row, width, rows))
      found.push(row);
  }
  const wide = found.filter((row) => (rows.cells[row] as string[]).length > width);
  if (wide.length * 2 > readable) return rows.lines[wide[0] as number] as number;
  for (const row of found) {
    for (const clock of skeleton.clocks) clock.stamps.status[row] = 0;
    lists.unreadable.add(rows.lines[row] as number);
    fates.mark(row, UNREAD, "row-unreadable");
  }
  return null;
}

/** A last line without a line end and with fields missing: its last value may be cut as well. */
const isCutOff = (row: number, width: number, rows: Rows): boolean =>
  !rows.endsWithLineEnd &&
  row === rows.cells.length - 1 &&
  rows.cells.length > 3 &&
  (rows.cells[row] as string[]).length < width;

function sampleOf({ dataFrom, dataTo }: Section): number[] {
  const count = dataTo - dataFrom;
  const stride = Math.max(1, Math.floor(count / 500));
  return Array.from({ length: Math.ceil(count / stride) }, (_, i) => dataFrom + i * stride);
}

function chooseStatistic(layout: Layout, answers: TrendAnswers): void {
  const { statistics } = layout;
  const chosen = statistics?.columns.get(answers.valueColumn ?? "") ?? statistics?.columns.get(statistics.proposal);
  const value = layout.groups[0]?.values[0];
  if (chosen !== undefined && value)
    layout.groups = [{ ...(layout.groups[0] as Layout["groups"][number]), values: [{ ...value, column: chosen }] }];
}

/** Gives columns of one name their number, so that two zones are never taken for one. */
function tellApart(layout: Layout): Set<string> {
  const counts = new Map<string, number>();
  for (const { values } of layout.groups) for (const { name } of values) counts.set(name, (counts.get(name) ?? 0) + 1);
  const repeated = new Set([...counts].filter(([, count]) => count > 1).map(([name]) => name));
  if (repeated.size === 0) return repeated;
  layout.groups = layout.groups.map((group) => ({
    ...group,
    values: group.values.map((value) =>
      repeated.has(value.name) ? { ...value, name: `${value.name} (column ${value.column + 1})` } : value,
    ),
  }));
  return repeated;
}

function readColumns(index: number, section: Section, layout: Layout, context: FileContext): PointDraft[] {
  return layout.groups.flatMap(({ source, values }) => {
    const clock = clockOf(source, context);
    const rowIndex = rowsWithStamp(
      section,
      clock,
      layout.form === "pairs" ? values.map((value) => value.column) : null,
      context,
    );
    const drafts = collect(rowIndex, clock, values, index, layout, context);
    if (layout.statistics) {
      const seconds = intervalSeconds(rowIndex, clock, layout, context);
      for (const draft of drafts) draft.intervalSeconds = seconds;
    }
    return drafts;
  });
}

function readLong(index: number, section: Section, layout: Layout, context: FileContext): PointDraft[] {
  const { nameColumn, valueColumn, unitColumn, statusColumn, source } = layout.long as NonNullable<Layout["long"]>;
  const { rows, fates, lists } = context;
  const clock = clockOf(source, context);
  const all = rowsWithStamp(section, clock, null, context);
  const byPoint = new Map<string, number[]>();
  for (const row of all) {
    const name = ((rows.cells[row] as string[])[nameColumn] ?? "").trim();
    if (name === "") {
      lists.unreadable.add(rows.lines[row] as number);
      fates.mark(row, UNREAD, "row-unreadable");
      continue;
    }
    const known = byPoint.get(name);
    if (known) known.push(row);
    else byPoint.set(name, [row]);
  }
  return [...byPoint].flatMap(([name, list]) => {
    const firstRow = rows.cells[list[0] as number] as string[];
    const unitText = unitColumn === null ? "" : (firstRow[unitColumn] ?? "").trim();
    const unit = readUnit(unitText);
    const sameUnit =
      unitColumn === null
        ? list
        : list.filter((row) => ((rows.cells[row] as string[])[unitColumn] ?? "").trim() === unitText);
    if (sameUnit.length < list.length) {
      const kept = new Set(sameUnit);
      for (const row of list) {
        if (kept.has(row)) continue;
        lists.unreadable.add(rows.lines[row] as number);
        fates.mark(row, UNREAD, "row-unreadable");
      }
    }
    const value: ValueColumn = {
      column: valueColumn,
      heading: name,
      name,
      unitAsWritten: unit?.unitAsWritten ?? (unitText === "" ? null : unitText),
      unit: unit?.unit ?? null,
      statusColumn,
      nameFromFile: false,
    };
    return collect(Int32Array.from(sameUnit), clock, [value], index, layout, context).map((draft) => ({
      ...draft,
      column: null,
    }));
  });
}

const clockOf = (source: TimeSource, { skeleton }: FileContext): Clock =>
  (skeleton.clocks.find((clock) => clock.source === source) ?? skeleton.clocks[0]) as Clock;

/** Rows of a section with a readable stamp; of a pair of columns only those with a value beside it. */
function rowsWithStamp(
  section: Section,
  clock: Clock,
  columns: readonly number[] | null,
  { rows, fates, lists }: FileContext,
): Int32Array {
  const list: number[] = [];
  for (let row = section.dataFrom; row < section.dataTo; row++) {
    const status = clock.stamps.status[row];
    if (columns && isUnread(status)) {
      lists.unreadable.add(rows.lines[row] as number);
      fates.mark(row, UNREAD, "row-unreadable");
    }
    if (status !== READ) continue;
    list.push(row);
  }
  return Int32Array.from(list);
}

function collect(
  rowIndex: Int32Array,
  clock: Clock,
  columns: readonly ValueColumn[],
  section: number,
  layout: Layout,
  context: FileContext,
): PointDraft[] {
  const { rows, skeleton, fates, lists, answers } = context;
  const local = new Float64Array(rowIndex.length);
  const offset = new Float64Array(rowIndex.length);
  const columnOffset = layout.offsetColumn === null ? null : offsetReader(layout.offsetColumn, rowIndex, rows);
  for (let i = 0; i < rowIndex.length; i++) {
    const row = rowIndex[i] as number;
    local[i] = clock.local[row] as number;
    const own = clock.stamps.offset[row] as number;
    offset[i] = !Number.isNaN(own) ? own : layout.saysUtc ? 0 : columnOffset ? columnOffset(row) : Number.NaN;
  }
  const { utc, state } = resolveLocal(
    { local, offset },
    skeleton.zone,
    answers.clock as ClockRule | undefined,
    clock.newestFirst,
  );
  for (let i = 0; i < rowIndex.length; i++) {
    const row = rowIndex[i] as number;
    if (isHeldBack(state[i])) {
      const code = state[i] === 2 ? "ambiguous-local-time" : "nonexistent-local-time";
      fates.mark(row, HELD_BACK, code);
      lists[state[i] === 2 ? "ambiguous" : "nonexistent"].add(rows.lines[row] as number);
    } else if (state[i] === REPEATED) {
      lists.repeated.add(rows.lines[row] as number);
    }
  }
  const input: GroupInput = {
    rows,
    rowIndex,
    utc,
    state,
    columns,
    section,
    reader: context.reader,
    fates,
    answers,
    goodFlags: layout.numericFlag && answers.flagColumn ? new Set(answers.flagColumn.good) : null,
    eventLines: lists.event,
    unreadableLines: lists.unreadable,
  };
  return collectGroup(input);
}

/** Offsets from a column of their own, in minutes or hours (`660`, `11`, `+11:00`), east of UTC positive. */
function offsetReader(column: number, rowIndex: Int32Array, rows: Rows): (row: number) => number {
  let largest = 0;
  for (const row of rowIndex) largest = Math.max(largest, Math.abs(Number(rows.cells[row]?.[column] ?? 0)) || 0);
  const scale = largest > 900 ? 1 : largest > 15 ? 60 : 3600;
  return (row) => {
    const text = (rows.cells[row]?.[column] ?? "").trim();
    const clock = /^([+-]?)(\d{1,2}):(\d{2})$/.exec(text);
    if (clock) return (clock[1] === "-" ? -1 : 1) * (Number(clock[2]) * 3600 + Number(clock[3]) * 60);
    return text === "" ? Number.NaN : Number(text) * scale;
  };
}

function intervalSeconds(rowIndex: Int32Array, clock: Clock, layout: Layout, { skeleton }: FileContext): number | null {
  const first = rowIndex[0];
  if (first === undefined) return null;
  if (layout.endSource) {
    const end = skeleton.clocks.find((other) => other.source === layout.endSource);
    const seconds = end ? (end.local[first] as number) - (clock.local[first] as number) : Number.NaN;
    if (seconds > 0) return seconds;
  }
  const second = rowIndex[1];
  return second === undefined ? null : Math.abs((clock.local[second] as number) - (clock.local[first] as number));
}
