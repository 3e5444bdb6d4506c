import { isUtf8 } from "node:buffer";
import type { ByteSource } from "./byte-source";
import { inferDateOrder } from "./date-order";
import { encodingByHead, type TextEncodingName } from "./decode";
import { type DelimiterVerdict, detectDelimiter } from "./delimiter";
import type { FileFacts } from "./file-facts";
import { FileTally } from "./file-tally";
import { makeFinding } from "./findings";
import { findingsSoFar } from "./findings-so-far";
import { type Continuation, readPart } from "./read-part";
import { readRegularPart } from "./read-regular-part";
import { NOT_TEXT, refuseBytes, refuseText } from "./refuse-non-text";
import { refusedResult } from "./refused-result";
import { Scratch } from "./scratch";
import { splitRows } from "./split-rows";
import { tallyResult } from "./tally-result";
import { EndlessLineError, TextBlocks } from "./text-blocks";
import type { ReadProgress, TrendAnswers, TrendDetected, TrendFileResult, TrendFinding, TrendPart } from "./trend-file";

export type PlainInput = {
  file: string;
  fileStem: string;
  source: ByteSource;
  timeZone: string;
  locale?: string;
  answers: TrendAnswers;
  /** What is known of the whole file. */
  facts: Partial<FileFacts>;
  /** Bytes that are read at a time. */
  blockBytes: number;
};

export type PlainEnd =
  | { status: "done"; result: TrendFileResult }
  /** Something that only the whole file shows was taken wrongly at first: read it again with these facts. */
  | { status: "again"; facts: Partial<FileFacts> };

/** Reads one text file part by part. */
export function* readPlainParts(input: PlainInput): Generator<TrendPart, PlainEnd> {
  const { file, source } = input;
  const head = source.read(0, 65_536);
  const noText = refuseBytes(head, file);
  if (noText) return refused(refusedResult(file, noText));
  const encoding = input.facts.encoding ?? encodingByHead(head);
  if (!encoding) return refused(refusedResult(file, NOT_TEXT));
  try {
    return yield* readBlocks(input, encoding);
  } catch (error) {
    if (!(error instanceof EndlessLineError)) throw error;
    const sentence =
      "A line of the file goes on for more than 16 MB, so it is no table of times and values. Export the trends as CSV, one line for each time.";
    return refused(refusedResult(file, { code: "not-a-trend-export", sentence }));
  }
}

const refused = (result: TrendFileResult): PlainEnd => ({ status: "done", result });

/** Of a file in parts the first one is small: it is read the long way, and says how the others can be read. */
const FIRST_BLOCK_BYTES = 64_000;
const FIRST_BLOCK_LINES = 60;
/** Plain rows are read so many bytes at a time (more of a long table, which has many points in few rows), and at least so many rows. */
const BLOCK_BYTES = { wide: 1_000_000, long: 4_000_000 };
const BLOCK_ROWS = 400;

const progressOf = (tally: FileTally, source: ByteSource, bytesRead: number): ReadProgress => ({
  bytesRead,
  bytesInFile: source.size,
  rows: tally.rows.rowsInFile,
  readings: tally.readings,
  findings: findingsSoFar(tally),
});

function* readBlocks(input: PlainInput, encoding: TextEncodingName): Generator<TrendPart, PlainEnd> {
  const { file, source, facts } = input;
  const blocks = new TextBlocks(source, encoding);
  const wholeBytes = input.blockBytes;
  const tally = new FileTally(facts);
  const scratch = new Scratch();
  const converted: TrendFinding[] = encoding === "utf-8" ? [] : [makeFinding("encoding-converted", { encoding })];
  const detected: TrendDetected = { encoding };
  let delimiter: DelimiterVerdict | null = null;
  let continuation: Continuation | null = null;
  let firstLine = 1;
  let parts = 0;
  let rowBytes = 0;
  for (let isLast = false; !isLast; ) {
    const block =
      source.size <= wholeBytes
        ? blocks.next(source.size)
        : delimiter
          ? blocks.next(
              Math.min(
                wholeBytes,
                Math.max(BLOCK_BYTES[continuation?.table.layout.long ? "long" : "wide"], BLOCK_ROWS * rowBytes),
              ),
            )
          : blocks.next(Math.min(wholeBytes, FIRST_BLOCK_BYTES), Math.min(FIRST_BLOCK_LINES, wholeBytes / 100));
    isLast = block.isLast;
    parts++;
    // UTF-8 was only supposed: a byte that is none shows that the file is written in the Windows character set.
    if (encoding === "utf-8" && !isUtf8(block.bytes))
      return { status: "again", facts: { ...facts, encoding: "windows-1252" } };
    let { bytes } = block;
    if (!delimiter) {
      const start = bytes.toString("utf8", 0, 300_000);
      const noTable = refuseText(start);
      if (noTable) return refused(refusedResult(file, noTable, detected));
      delimiter = detectDelimiter(start);
      if (delimiter.delimiter !== null) detected.delimiter = delimiter.delimiter;
      if (delimiter.hinted) firstLine = 2;
      bytes = bytes.subarray(Buffer.byteLength(start.slice(0, delimiter.bodyStart)));
    }
    const mark = delimiter.delimiter ?? ",";
    const regular =
      continuation && readRegularPart({ ...input, bytes, delimiter: mark, firstLine, continuation, tally, scratch });
    if (regular) {
      firstLine += regular.rows;
      const progress = progressOf(tally, source, isLast ? source.size : blocks.bytesRead);
      yield { points: regular.points, progress, isFirst: false };
      continue;
    }
    const rows = splitRows(bytes, mark, { firstLine });
    const part = readPart({ ...input, rows, delimiter: mark, hinted: delimiter.hinted, isLast, continuation, tally });
    if (part.status === "refused") return refused(refusedResult(file, part.refusal, detected, converted));
    continuation = part.continuation;
    firstLine = rows.lineAfter(rows.count - 1);
    blocks.giveBack(bytes.length - rows.startOf(rows.count));
    rowBytes = bytes.length / Math.max(1, rows.count);
    const progress = progressOf(tally, source, isLast ? source.size : blocks.bytesRead);
    yield { points: part.points, progress, isFirst: parts === 1 };
  }
  tally.order = facts.order ?? inferDateOrder(tally.dates);
  const settled: FileFacts = { encoding, decimal: tally.decimal, order: tally.order, cells: tally.evidenceByPoint };
  if (tally.mustRepeat) return { status: "again", facts: settled };
  const result = tallyResult(tally, { ...input, detected, converted });
  return { status: "done", result: parts > 1 ? { ...result, facts: settled } : result };
}
