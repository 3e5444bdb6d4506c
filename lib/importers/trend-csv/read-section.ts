import type { FileContext } from "./file-context";
import { type Layout, readLayout } from "./layout";
import type { PointDraft } from "./point-draft";
import { readPreamble } from "./preamble";
import { readColumns } from "./read-columns";
import { readLong } from "./read-long";
import { type Clock, dateColumnOf } from "./read-table";
import { columnsDoNotMatch } from "./refusals";
import { UNREAD } from "./row-fates";
import type { Rows } from "./rows";
import type { Section } from "./sections";
import { READ } from "./stamp-column";
import type { TrendAnswers, TrendRefusal } from "./trend-file";

/** A table, or what a part of the file holds of it. `section` counts the tables of the whole file. */
export type SectionReading = {
  section: number;
  layout: Layout;
  width: number;
  drafts: PointDraft[];
  repeatedNames: Set<string>;
};

/** Reads one table: what its columns are, then the readings of its points. `index` counts the tables of these rows. */
export function readSection(
  index: number,
  section: Section,
  context: FileContext,
): { status: "read"; reading: SectionReading } | { status: "refused"; refusal: TrendRefusal } {
  const { continued } = context;
  const number = (continued?.section ?? 0) + index;
  if (index === 0 && continued) {
    rejectWideRows(section, continued.width, context);
    return readPoints(number, section, { ...continued, repeatedNames: new Set() }, context);
  }
  const { rows, skeleton } = context;
  const headings = section.headerRow >= 0 ? rows.cellsOf(section.headerRow) : [];
  const width = headings.length > 0 ? headings.length : usualWidth(rows, section);
  const over = rejectWideRows(section, width, context);
  if (over?.isMost) return { status: "refused", refusal: columnsDoNotMatch(over.line, width) };

  const above = section.headerRow > section.metaFrom ? rows.cellsOf(section.headerRow - 1) : null;
  const sampled = sampleOf(section);
  const layout = readLayout({
    headings,
    units: section.unitsRow >= 0 ? rows.cellsOf(section.unitsRow) : null,
    above,
    preamble: readPreamble(rowsBetween(rows, section.metaFrom, section.headerRow), headings),
    sources: skeleton.clocks.map((clock) => clock.source).filter((source) => dateColumnOf(source) < width),
    width,
    fileStem: context.fileStem,
    sample: (column) => sampled.map((row) => rows.cell(row, column)),
    isWhollyBlank: (column) => {
      for (let row = section.dataFrom; row < section.dataTo; row++)
        if (rows.cell(row, column).trim() !== "") return false;
      return true;
    },
  });
  if (layout.statistics) chooseStatistic(layout, context.answers);
  return readPoints(number, section, { layout, width, repeatedNames: tellApart(layout) }, context);
}

function readPoints(
  number: number,
  section: Section,
  table: Pick<SectionReading, "layout" | "width" | "repeatedNames">,
  context: FileContext,
): { status: "read"; reading: SectionReading } {
  const { layout, width, repeatedNames } = table;
  const drafts = layout.long
    ? readLong(number, section, layout, context)
    : readColumns(number, section, layout, context);
  return { status: "read", reading: { section: number, layout, width, drafts, repeatedNames } };
}

const rowsBetween = (rows: Rows, from: number, to: number): string[][] =>
  Array.from({ length: Math.max(0, to - from) }, (_, i) => rows.cellsOf(from + i));

function usualWidth(rows: Rows, section: Section): number {
  let width = 0;
  for (let row = section.dataFrom; row < Math.min(section.dataTo, section.dataFrom + 200); row++) {
    width = Math.max(width, rows.width(row));
  }
  return width;
}

/** Rejects rows with more fields than headings, which cannot be trusted; says so when they are most rows. */
function rejectWideRows(
  section: Section,
  width: number,
  { rows, skeleton, fates, lists, continued }: FileContext,
): { isMost: boolean; line: number } | null {
  const status = (skeleton.clocks[0] as Clock).stamps.status;
  const found: number[] = [];
  let readable = 0;
  for (let row = section.dataFrom; row < section.dataTo; row++) {
    if (status[row] !== READ) continue;
    readable++;
    if (rows.malformed.has(row) || hasTextBeyond(row, width, rows) || isCutOff(row, width, rows, continued !== null))
      found.push(row);
  }
  const wide = found.filter((row) => rows.width(row) > width);
  const line = rows.lines[wide[0] as number] as number;
  if (!continued && wide.length * 2 > readable) return { isMost: true, line };
  for (const row of found) {
    for (const clock of skeleton.clocks) clock.stamps.status[row] = 0;
    lists.unreadable.add(rows.lines[row] as number);
    fates.mark(row, UNREAD, "row-unreadable");
  }
  return wide.length > 0 ? { isMost: false, line } : null;
}

function hasTextBeyond(row: number, width: number, rows: Rows): boolean {
  for (let column = width; column < rows.width(row); column++) if (rows.cell(row, column).trim() !== "") return true;
  return false;
}

/** A last line without a line end and with fields missing: its last value may be cut as well. */
const isCutOff = (row: number, width: number, rows: Rows, isContinued: boolean): boolean =>
  !rows.endsWithLineEnd && row === rows.count - 1 && (isContinued || rows.count > 3) && rows.width(row) < width;

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
