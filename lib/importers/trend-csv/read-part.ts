import { CellReader } from "./cell-reader";
import { describeOpening } from "./describe-file";
import { type FileContext, newLists, type TableContinuation } from "./file-context";
import { type FileFacts, factKey } from "./file-facts";
import type { FileTally } from "./file-tally";
import { countMarks, decimalOf } from "./number-format";
import { settleOddRows } from "./odd-rows";
import { readSection, type SectionReading } from "./read-section";
import { continueTimes, readSkeleton, type Skeleton, type TimeContinuation } from "./read-table";
import { mixedFormats } from "./refusals";
import { RowFates } from "./row-fates";
import type { Rows } from "./rows";
import type { PartPoint, TrendAnswers, TrendRefusal } from "./trend-file";

/** Where the next part of a file takes up. */
export type Continuation = { times: TimeContinuation; table: TableContinuation };

export type PartInput = {
  rows: Rows;
  delimiter: string;
  /** True when a `sep=` line stood before the table. */
  hinted: boolean;
  isLast: boolean;
  continuation: Continuation | null;
  timeZone: string;
  fileStem: string;
  answers: TrendAnswers;
  facts: Partial<FileFacts>;
  tally: FileTally;
};

export type PartReading =
  | { status: "read"; points: PartPoint[]; continuation: Continuation }
  | { status: "refused"; refusal: TrendRefusal }
  /** The hour that clocks repeat fills all of the rows, and has to be seen whole: give more. */
  | { status: "too-short" };

/** Reads the rows of one part, which may be the whole file: tables, stamps, columns, values, order. Adds to the tally. */
export function readPart(input: PartInput): PartReading {
  const { rows, tally, facts, answers, continuation, isLast } = input;
  const base = readSkeleton({
    rows,
    timeZone: input.timeZone,
    answeredOrder: answers.dateOrder,
    answeredStart: answers.timeStart,
    knownOrder: facts.order,
    dates: tally.dates,
    continued: continuation?.times ?? null,
    isLast,
  });
  if (base.status !== "ok") return base;
  const { skeleton } = base;
  const changed = changedForm(skeleton, rows, tally);
  if (changed) return { status: "refused", refusal: changed };
  tally.takeOrder(skeleton);
  const context: FileContext = {
    rows,
    skeleton,
    fates: new RowFates(rows),
    reader: new CellReader(decimalMark(input, skeleton)),
    answers,
    fileStem: input.fileStem,
    lists: newLists(),
    continued: continuation?.table ?? null,
    isLast,
    evidence: tally.evidence,
    unitBefore: (section, name) => tally.pointAt(factKey(section, name))?.draft.unitAsWritten,
  };
  const sections: SectionReading[] = [];
  for (const [index, section] of skeleton.sections.entries()) {
    const read = readSection(index, section, context);
    if (read.status === "refused") return read;
    sections.push(read.reading);
  }
  settleOddRows(context);
  const lastLine = rows.lines[rows.count - 1] ?? -1;
  tally.isCutOff = isLast && !rows.endsWithLineEnd && context.lists.unreadable.has(lastLine);
  tally.opening ??= describeOpening(context, sections[0] as SectionReading, input);
  const points = tally.add(sections, context, input.delimiter);
  const { section, layout, width } = sections.at(-1) as SectionReading;
  const times = continueTimes(rows, skeleton, continuation?.times ?? null);
  return { status: "read", points, continuation: { times, table: { section, layout, width } } };
}

/** A refusal when stamps are written otherwise than in the parts before. */
function changedForm({ clocks }: Skeleton, rows: Rows, tally: FileTally): TrendRefusal | null {
  for (const [i, { stamps }] of clocks.entries()) {
    const used = stamps.formats.filter((format) => format.count > 0);
    const timed = used.filter((format) => !format.text.includes("date only"));
    for (const format of timed.length > 0 ? timed : []) {
      const before = tally.stampForms.get(i);
      if (before === undefined) tally.stampForms.set(i, format.text);
      else if (before !== format.text) return mixedFormats([rows.lines[format.firstRow] as number], false);
    }
  }
  return null;
}

/** Rows and cells that are looked at for the decimal mark. */
const SAMPLE_ROWS = 300;
const SAMPLE_CELLS = 6000;

function decimalMark({ rows, delimiter, facts, tally }: PartInput, skeleton: Skeleton): "." | "," {
  if (facts.decimal) return facts.decimal;
  const dataFrom = skeleton.sections[0]?.dataFrom ?? 0;
  tally.marks = countMarks(sampleCells(rows, skeleton, dataFrom), tally.marks);
  return tally.takeDecimal(decimalOf(tally.marks, delimiter) ?? ".");
}

/** Cells that may hold numbers, from rows spread over the table. */
function sampleCells(rows: Rows, skeleton: Skeleton, dataFrom: number): string[] {
  const stamps = new Set(
    skeleton.clocks.flatMap(({ source }) =>
      source.form === "date-and-time" ? [source.dateColumn, source.timeColumn] : [source.column],
    ),
  );
  const wanted = Math.min(SAMPLE_ROWS, Math.max(30, Math.ceil(SAMPLE_CELLS / Math.max(1, rows.width(dataFrom)))));
  const stride = Math.max(1, Math.floor((rows.count - dataFrom) / wanted));
  const cells: string[] = [];
  for (let row = dataFrom; row < rows.count; row += stride) {
    for (const [column, cell] of rows.cellsOf(row).entries()) if (!stamps.has(column) && cell !== "") cells.push(cell);
  }
  return cells;
}
