import type { ByteSource } from "./byte-source";
import type { TextEncodingName } from "./decode";

const LF = 10;
const CR = 13;
/** Longest line that is waited for [bytes]. */
const LONGEST_LINE = 16_000_000;

/** A stretch of whole lines as UTF-8; `isLast` when the file ends with it. */
export type TextBlock = { bytes: Buffer; isLast: boolean };

/** Thrown for a line that does not end: what is read is no table. */
export class EndlessLineError extends Error {}

/** Hands out a file as UTF-8 in blocks of whole lines; what is not used of one stands at the head of the next. */
export class TextBlocks {
  private offset: number;
  private rest: Buffer = Buffer.alloc(0);
  private isFirst = true;
  private readonly decoder: TextDecoder | null;

  constructor(
    private readonly source: ByteSource,
    private readonly encoding: TextEncodingName,
    private readonly blockBytes: { first: number; others: number },
  ) {
    const head = source.read(0, 3);
    const marked = encoding === "utf-8" && head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf;
    this.offset = marked ? 3 : 0;
    this.decoder = encoding === "utf-8" ? null : new TextDecoder(encoding);
  }

  /** Bytes of the file that were handed out for good. */
  get bytesRead(): number {
    const perByte = this.encoding.startsWith("utf-16") ? 2 : 1;
    return Math.max(0, Math.min(this.source.size, this.offset - this.rest.length * perByte));
  }

  next(): TextBlock {
    let bytes = this.rest;
    let wanted = this.isFirst ? this.blockBytes.first : this.blockBytes.others;
    this.isFirst = false;
    for (;;) {
      bytes = Buffer.concat([bytes, this.readOn(wanted)]);
      const isLast = this.offset >= this.source.size;
      const end = isLast ? bytes.length : lineEndBefore(bytes);
      if (end > 0 || isLast) {
        this.rest = bytes.subarray(end);
        return { bytes: bytes.subarray(0, end), isLast };
      }
      if (bytes.length > LONGEST_LINE) throw new EndlessLineError();
      wanted = bytes.length;
    }
  }

  /** Puts the end of the block that was handed out last back: it begins the next one. */
  giveBack(bytes: Buffer): void {
    this.rest = Buffer.concat([bytes, this.rest]);
  }

  private readOn(count: number): Buffer {
    const raw = this.source.read(this.offset, count);
    this.offset += raw.length;
    const isLast = this.offset >= this.source.size;
    return this.decoder === null
      ? Buffer.from(raw.buffer, raw.byteOffset, raw.length)
      : Buffer.from(this.decoder.decode(raw, { stream: !isLast }));
  }
}

/** Where the last whole line ends, or 0. */
function lineEndBefore(bytes: Buffer): number {
  const lf = bytes.lastIndexOf(LF);
  if (lf >= 0) return lf + 1;
  // A carriage return at the very end may be half of a line end.
  const cr = bytes.lastIndexOf(CR, bytes.length - 2);
  return cr >= 0 ? cr + 1 : 0;
}
