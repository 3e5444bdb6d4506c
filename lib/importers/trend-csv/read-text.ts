import { CellReader } from "./cell-reader";
import { detectDelimiter } from "./delimiter";
import { describeFile } from "./describe-file";
import type { FileContext } from "./file-context";
import { makeFinding } from "./findings";
import { finishPoints } from "./finish-points";
import { judgeFile } from "./judge-file";
import { LineList } from "./line-list";
import { mergeSections } from "./merge-sections";
import { detectDecimal } from "./number-format";
import { settleOddRows } from "./odd-rows";
import { readSection, type SectionReading } from "./read-section";
import { readSkeleton, type Skeleton } from "./read-table";
import { noReadings } from "./refusals";
import { RowFates } from "./row-fates";
import type { Rows } from "./rows";
import { splitRows } from "./split-rows";
import {
  NO_ROWS,
  type TrendAnswers,
  type TrendDetected,
  type TrendFinding,
  type TrendReading,
  type TrendRefusal,
} from "./trend-file";

export type TextInput = {
  file: string;
  fileStem: string;
  text: string;
  encoding: string;
  timeZone: string;
  locale?: string;
  answers: TrendAnswers;
};

/** Reads the text of one file: delimiter, tables, stamps, columns, values; then order, gaps and what has to be asked. */
export function readText(input: TextInput): TrendReading {
  const converted = input.encoding === "utf-8" ? [] : [makeFinding("encoding-converted", { encoding: input.encoding })];
  const detected: TrendDetected = { encoding: input.encoding };
  const { delimiter, hinted, bodyStart } = detectDelimiter(input.text);
  const rows = splitRows(input.text.slice(bodyStart), delimiter ?? ",", { firstLine: hinted ? 2 : 1 });
  if (delimiter !== null) detected.delimiter = delimiter;

  const base = readSkeleton(rows, input.timeZone, input.answers.dateOrder);
  if (base.status === "refused") return refusedReading(input.file, base.refusal, detected, converted);
  const { skeleton } = base;
  const dataFrom = skeleton.sections[0]?.dataFrom ?? 0;
  const decimal = detectDecimal(sampleCells(rows, skeleton, dataFrom), delimiter ?? ",") ?? ".";
  const context: FileContext = {
    rows,
    skeleton,
    fates: new RowFates(rows),
    reader: new CellReader(decimal),
    answers: input.answers,
    fileStem: input.fileStem,
    lists: {
      event: new LineList(),
      unreadable: new LineList(),
      ambiguous: new LineList(),
      nonexistent: new LineList(),
      repeated: new LineList(),
      trailing: new LineList(),
    },
  };
  const sections: SectionReading[] = [];
  for (const [index, section] of skeleton.sections.entries()) {
    const read = readSection(index, section, context);
    if (read.status === "refused") return refusedReading(input.file, read.refusal, detected, converted);
    sections.push(read.reading);
  }
  settleOddRows(context);
  const drafts = mergeSections(sections);
  const finished = finishPoints(drafts, context);

  const verdict = judgeFile({ ...input, context, sections, drafts, finished, hinted });
  const findings = [...converted, ...verdict.findings];
  const account = context.fates.account(dataFrom, delimiter ?? ",");
  const readings = finished.points.reduce((sum, point) => sum + point.tsUtcSeconds.length, 0);
  const heldBack = context.lists.ambiguous.count + context.lists.nonexistent.count;
  const refusal = readings + heldBack > 0 ? null : noReadings(finished.points.length, whyNone(finished.findings));
  const caution = findings.some((finding) => finding.severity !== "note");
  return {
    file: input.file,
    outcome: refusal ? "refuse" : verdict.asks.length > 0 ? "ask" : caution ? "accept-with-findings" : "accept",
    detected: { ...detected, decimal, ...describeFile(context, sections, drafts, input.timeZone) },
    points: finished.points,
    instantsKnown: verdict.instantsKnown,
    ask: refusal ? [] : verdict.asks,
    findings,
    refusal,
    rows: account.rows,
    rowNotes: account.notes,
  };
}

/** Cells that may hold numbers, from rows spread over the table. */
function sampleCells(rows: Rows, skeleton: Skeleton, dataFrom: number): string[] {
  const stamps = new Set(
    skeleton.clocks.flatMap(({ source }) =>
      source.form === "date-and-time" ? [source.dateColumn, source.timeColumn] : [source.column],
    ),
  );
  const stride = Math.max(1, Math.floor((rows.count - dataFrom) / 300));
  const cells: string[] = [];
  for (let row = dataFrom; row < rows.count; row += stride) {
    for (const [column, cell] of rows.cellsOf(row).entries()) if (!stamps.has(column) && cell !== "") cells.push(cell);
  }
  return cells;
}

function whyNone(findings: readonly TrendFinding[]): string {
  const lost = findings.filter((finding) => finding.count !== undefined && finding.code !== "gap");
  return lost.length === 0
    ? "There is a heading and nothing to read under it."
    : lost
        .map((finding) => finding.sentence)
        .slice(0, 3)
        .join(" ");
}

export function refusedReading(
  file: string,
  refusal: TrendRefusal,
  detected: TrendDetected = {},
  findings: TrendFinding[] = [],
): TrendReading {
  return {
    file,
    outcome: "refuse",
    detected,
    points: [],
    instantsKnown: true,
    ask: [],
    findings,
    refusal,
    rows: { ...NO_ROWS },
    rowNotes: [],
  };
}
