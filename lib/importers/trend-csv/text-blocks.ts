import type { ByteSource } from "./byte-source";
import type { TextEncodingName } from "./decode";

const LF = 10;
const CR = 13;
/** Longest line that is waited for [bytes]. */
const LONGEST_LINE = 16_000_000;

/** A stretch of whole lines as UTF-8, good until the next one is asked for; `isLast` when the file ends with it. */
export type TextBlock = { bytes: Buffer; isLast: boolean };

/** Thrown for a line that does not end: what is read is no table. */
export class EndlessLineError extends Error {}

/** Hands out a file as UTF-8 in blocks of whole lines; what is not used of one stands at the head of the next. */
export class TextBlocks {
  private offset: number;
  private buffer: Buffer;
  /** Bytes of the buffer that have been read and not handed out. */
  private from = 0;
  private to = 0;
  private readonly decoder: TextDecoder | null;

  constructor(
    private readonly source: ByteSource,
    private readonly encoding: TextEncodingName,
  ) {
    const head = source.read(0, 3);
    const marked = encoding === "utf-8" && head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf;
    this.offset = marked ? 3 : 0;
    this.decoder = encoding === "utf-8" ? null : new TextDecoder(encoding);
    this.buffer = Buffer.alloc(0);
  }

  /** Bytes of the file that were handed out for good. */
  get bytesRead(): number {
    const perByte = this.encoding.startsWith("utf-16") ? 2 : 1;
    return Math.max(0, Math.min(this.source.size, this.offset - (this.to - this.from) * perByte));
  }

  /** The next block of about so many bytes and at least so many lines, unless the file is shorter. */
  next(wantedBytes: number, leastLines = 1): TextBlock {
    let wanted = wantedBytes;
    for (;;) {
      this.readOn(wanted);
      const held = this.to - this.from;
      // What is left of an earlier block may be more than is wanted.
      const bytes = this.buffer.subarray(this.from, this.from + Math.min(held, Math.max(wanted, 1)));
      const isLast = this.offset >= this.source.size && bytes.length === held;
      const end = isLast ? bytes.length : lineEndBefore(bytes);
      if (isLast || (end > 0 && hasLines(bytes, leastLines)) || (end > 0 && bytes.length > LONGEST_LINE)) {
        this.from += end;
        return { bytes: bytes.subarray(0, end), isLast };
      }
      if (bytes.length > LONGEST_LINE) throw new EndlessLineError();
      wanted = 2 * Math.max(wanted, bytes.length);
    }
  }

  /** Puts the last bytes of the block that was handed out back: they begin the next one. */
  giveBack(count: number): void {
    this.from -= count;
  }

  /** Reads on until so many bytes are held. */
  private readOn(count: number): void {
    this.buffer.copyWithin(0, this.from, this.to);
    this.to -= this.from;
    this.from = 0;
    const wanted = Math.min(count - this.to, this.source.size - this.offset);
    if (wanted <= 0) return;
    if (this.decoder === null) {
      this.makeRoom(wanted);
      this.to += readInto(this.source, this.offset, this.buffer.subarray(this.to, this.to + wanted));
      this.offset += wanted;
      return;
    }
    const raw = this.source.read(this.offset, wanted);
    this.offset += raw.length;
    const text = Buffer.from(this.decoder.decode(raw, { stream: this.offset < this.source.size }));
    this.makeRoom(text.length);
    text.copy(this.buffer, this.to);
    this.to += text.length;
  }

  private makeRoom(count: number): void {
    if (this.to + count <= this.buffer.length) return;
    const larger = Buffer.allocUnsafeSlow(Math.ceil((this.to + count) * 1.25));
    this.buffer.copy(larger, 0, 0, this.to);
    this.buffer = larger;
  }
}

function readInto(source: ByteSource, offset: number, target: Buffer): number {
  if (source.readInto) return source.readInto(offset, target);
  const raw = source.read(offset, target.length);
  target.set(raw);
  return raw.length;
}

/** Where the last whole line ends, or 0. */
function lineEndBefore(bytes: Buffer): number {
  const lf = bytes.lastIndexOf(LF);
  if (lf >= 0) return lf + 1;
  // A carriage return at the very end may be half of a line end.
  const cr = bytes.lastIndexOf(CR, bytes.length - 2);
  return cr >= 0 ? cr + 1 : 0;
}

function hasLines(bytes: Buffer, least: number): boolean {
  let at = -1;
  for (let lines = 0; lines < least; lines++) {
    at = bytes.indexOf(LF, at + 1);
    if (at < 0) return least === 1;
  }
  return true;
}
