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
import { type RegularPart, readRegularPart } from "./read-regular-part";
import { NOT_TEXT, refuseBytes, refuseText } from "./refuse-non-text";
import { refusedResult } from "./refused-result";
import { Scratch } from "./scratch";
import { splitRows } from "./split-rows";
import { tallyResult } from "./tally-result";
import { EndlessLineError, type TextBlock, TextBlocks } from "./text-blocks";
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
    for (const first of FIRST_BLOCKS) {
      const end = yield* readBlocks(input, encoding, first);
      if (end) return end;
    }
    throw new Error("the last of the first blocks settles the file");
  } catch (error) {
    if (!(error instanceof EndlessLineError)) throw error;
    const sentence =
      "A line of the file goes on for more than 16 MB, so it is no table of times and values. Export the trends as CSV, one line for each time.";
    return refused(refusedResult(file, { code: "not-a-trend-export", sentence }));
  }
}

const refused = (result: TrendFileResult): PlainEnd => ({ status: "done", result });

/** A file of so many bytes is read in one go. */
const WHOLE_BYTES = 32_000;
export const isReadInParts = ({ size }: ByteSource, blockBytes: number): boolean =>
  size > Math.min(blockBytes, WHOLE_BYTES);

type FirstBlock = { bytes: number; lines: number };
/**
 * Of a file in parts the first one is small: it is read the long way, and says how the others can be read. Where it holds
 * no table, one may follow: then more is looked at before the file is refused.
 */
const FIRST_BLOCKS: readonly FirstBlock[] = [
  { bytes: 16_000, lines: 16 },
  { bytes: 256_000, lines: 250 },
  { bytes: 4_000_000, lines: 4_000 },
];
/** Plain rows are read so many bytes at a time (more of a long table, which has many points in few rows), and so many rows. */
const PLAIN_BLOCK = { wide: 2_000_000, long: 4_000_000, rows: 400 };
/** Rows that need a closer look, and those about them. */
const OTHER_BLOCK = { wide: 64_000, long: 100_000, rows: 60 };
/** Most that is read in one go because the hour that clocks repeat has to be seen whole. */
const MOST_BLOCK_BYTES = 64_000_000;

/** How much to read next. */
class BlockSizes {
  /** Bytes of a row, as the rows read last have it. */
  rowBytes = 0;
  private factor = 1;
  /** Grows while plain rows are few between others: then those are read in larger blocks too. */
  private otherFactor = 1;

  constructor(
    private readonly input: PlainInput,
    private readonly first: FirstBlock,
  ) {}

  next(blocks: TextBlocks, table: { isLong: boolean } | null, isPlain: boolean): TextBlock {
    const { source, blockBytes } = this.input;
    if (!isReadInParts(source, blockBytes)) return blocks.next(source.size);
    const most = blockBytes * this.factor;
    if (!table) return blocks.next(Math.min(most, this.first.bytes), Math.min(this.first.lines, Math.ceil(most / 100)));
    const sizes = isPlain ? PLAIN_BLOCK : OTHER_BLOCK;
    const kind = table.isLong ? "long" : "wide";
    const usual = isPlain ? sizes[kind] : Math.min(sizes[kind] * this.otherFactor, PLAIN_BLOCK[kind]);
    const wanted = Math.max(usual * this.factor, Math.ceil(sizes.rows * this.rowBytes));
    return blocks.next(Math.min(most, wanted));
  }

  /** The block was too short; false when it cannot be longer. */
  enlarge(): boolean {
    this.factor *= 4;
    return this.input.blockBytes * this.factor <= MOST_BLOCK_BYTES;
  }

  /** So much of a block turned out to be plain. */
  wasPlain(share: number): void {
    this.otherFactor = share < 0.1 ? this.otherFactor * 2 : 1;
  }

  sufficed(): void {
    this.factor = 1;
  }
}

const progressOf = (tally: FileTally, source: ByteSource, bytesRead: number): ReadProgress => ({
  bytesRead,
  bytesInFile: source.size,
  rows: tally.rows.rowsInFile,
  readings: tally.readings,
  findings: findingsSoFar(tally),
});

/** Null when a first block of that size holds no table, and a larger one may. */
function* readBlocks(
  input: PlainInput,
  encoding: TextEncodingName,
  first: FirstBlock,
): Generator<TrendPart, PlainEnd | null> {
  const { file, source, facts } = input;
  const blocks = new TextBlocks(source, encoding);
  const sizes = new BlockSizes(input, first);
  const tally = new FileTally(facts);
  const scratch = new Scratch();
  const converted: TrendFinding[] = encoding === "utf-8" ? [] : [makeFinding("encoding-converted", { encoding })];
  const detected: TrendDetected = { encoding };
  let delimiter: DelimiterVerdict | null = null;
  let continuation: Continuation | null = null;
  let firstLine = 1;
  let parts = 0;
  let isPlain = true;
  for (let isLast = false; !isLast; ) {
    const table: { isLong: boolean } | null = continuation && { isLong: continuation.table.layout.long !== null };
    const block = sizes.next(blocks, table, isPlain);
    isLast = block.isLast;
    parts++;
    const mayFollow = parts === 1 && !isLast && first !== FIRST_BLOCKS.at(-1);
    // UTF-8 was only supposed: a byte that is none shows that the file is written in the Windows character set.
    if (encoding === "utf-8" && !isUtf8(block.bytes))
      return { status: "again", facts: { ...facts, encoding: "windows-1252" } };
    let { bytes } = block;
    if (!delimiter) {
      const start = bytes.toString("utf8", 0, 300_000);
      const noTable = refuseText(start);
      if (noTable) return mayFollow ? null : refused(refusedResult(file, noTable, detected));
      delimiter = detectDelimiter(start);
      if (delimiter.delimiter !== null) detected.delimiter = delimiter.delimiter;
      if (delimiter.hinted) firstLine = 2;
      bytes = bytes.subarray(Buffer.byteLength(start.slice(0, delimiter.bodyStart)));
    }
    const mark = delimiter.delimiter ?? ",";
    const regular: RegularPart | null =
      continuation && isPlain
        ? readRegularPart({ ...input, bytes, delimiter: mark, firstLine, isLast, continuation, tally, scratch })
        : null;
    if (regular) {
      firstLine += regular.rows;
      isPlain = regular.isPlain;
      sizes.wasPlain(isPlain ? 1 : regular.end / bytes.length);
      blocks.giveBack(bytes.length - regular.end);
      isLast &&= regular.end === bytes.length;
      const progress = progressOf(tally, source, isLast ? source.size : blocks.bytesRead);
      yield { points: regular.points, progress, isFirst: false };
      continue;
    }
    const rows = splitRows(bytes, mark, { firstLine });
    const part = readPart({ ...input, rows, delimiter: mark, hinted: delimiter.hinted, isLast, continuation, tally });
    if (part.status === "refused")
      return mayFollow ? null : refused(refusedResult(file, part.refusal, detected, converted));
    if (part.status === "too-short") {
      if (!sizes.enlarge()) throw new EndlessLineError();
      blocks.giveBack(bytes.length);
      isPlain = false;
      continue;
    }
    sizes.sufficed();
    sizes.rowBytes = bytes.length / Math.max(1, rows.count);
    isPlain = true;
    continuation = part.continuation;
    firstLine = rows.lineAfter(rows.count - 1);
    blocks.giveBack(bytes.length - rows.startOf(rows.count));
    const progress = progressOf(tally, source, isLast ? source.size : blocks.bytesRead);
    yield { points: part.points, progress, isFirst: parts === 1 };
  }
  tally.order = facts.order ?? inferDateOrder(tally.dates);
  const settled: FileFacts = { encoding, decimal: tally.decimal, order: tally.order, cells: tally.evidenceByPoint };
  if (tally.mustRepeat) return { status: "again", facts: settled };
  const result = tallyResult(tally, { ...input, detected, converted });
  return { status: "done", result: parts > 1 ? { ...result, facts: settled } : result };
}
