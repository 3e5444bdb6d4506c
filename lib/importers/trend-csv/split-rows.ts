import { isAscii } from "node:buffer";
import { fieldEnd } from "./plain-field";
import { type Fields, QUOTE, Rows } from "./rows";

const CR = 13;
const LF = 10;
const BRACE = 123;

export type SplitOptions = {
  /** Stop after so many rows. */
  maxRows?: number;
  /** Physical line on which the text begins. */
  firstLine?: number;
};

/**
 * Splits UTF-8 text into rows by one delimiter of one byte. Quoted fields may hold delimiters, doubled quotes and line
 * ends; a quote that is not closed within 1,000 bytes spoils its own line only, not the rest of the file. Unlike a
 * general CSV parser it keeps the physical line of each row and makes no strings.
 */
export function splitRows(text: Uint8Array | string, delimiter: string, options: SplitOptions = {}): Rows {
  const bytes = typeof text === "string" ? Buffer.from(text) : Buffer.from(text.buffer, text.byteOffset, text.length);
  return new Rows(new Splitter(bytes, delimiter.charCodeAt(0)).split(options));
}

class Splitter {
  private readonly special = new Uint8Array(256);
  private starts: Int32Array;
  private rowFirst: Int32Array = new Int32Array(1024);
  private lines: Int32Array = new Int32Array(1024);
  private fieldCount = 0;
  private count = 0;
  private line = 1;
  private readonly fields: Fields;

  constructor(
    private readonly bytes: Buffer,
    private readonly mark: number,
  ) {
    for (const code of [mark, CR, LF]) this.special[code] = 1;
    this.starts = new Int32Array(Math.max(16, bytes.length >> 2));
    this.fields = {
      bytes,
      length: bytes.length,
      count: 0,
      rowFirst: this.rowFirst,
      starts: this.starts,
      lines: this.lines,
      nextLine: 1,
      apart: new Map(),
      malformed: new Set(),
      endsWithLineEnd: true,
      ascii: isAscii(bytes),
      quotes: bytes.includes(QUOTE),
    };
  }

  split({ maxRows = Number.POSITIVE_INFINITY, firstLine = 1 }: SplitOptions): Fields {
    const { bytes, fields } = this;
    const hasBraces = bytes.includes(BRACE);
    this.line = firstLine;
    let at = 0;
    while (at < bytes.length && this.count < maxRows) {
      this.beginRow(at);
      const next = fields.quotes || hasBraces ? this.dressedRow(at) : this.plainRow(at);
      at = next < 0 ? this.carefulRow(at, hasBraces) : next;
      this.count++;
      this.line++;
    }
    this.grow(1);
    this.rowFirst[this.count] = this.fieldCount;
    const { count, rowFirst, starts, lines } = this;
    return { ...fields, length: Math.min(at, bytes.length), count, rowFirst, starts, lines, nextLine: this.line };
  }

  private beginRow(at: number): void {
    this.grow(2);
    this.rowFirst[this.count] = this.fieldCount;
    this.lines[this.count] = this.line;
    this.starts[this.fieldCount++] = at;
  }

  /** Goes to the end of a row without quotes or braces; returns where the next one begins. */
  private plainRow(from: number): number {
    const { bytes, special, mark } = this;
    const { length } = bytes;
    let at = from;
    for (;;) {
      while (at < length && special[bytes[at] as number] === 0) at++;
      if (this.fieldCount + 1 >= this.starts.length) this.growStarts();
      this.starts[this.fieldCount++] = at + 1;
      if (at >= length) {
        this.fields.endsWithLineEnd = false;
        return length;
      }
      if (bytes[at] !== mark) return this.pastLineEnd(at);
      at++;
    }
  }

  /** A row whose quotes and braces stand about whole fields, so that these are spans; -1, with none noted, for another. */
  private dressedRow(from: number): number {
    const { bytes, mark } = this;
    const first = this.fieldCount;
    let at = from;
    for (;;) {
      at = fieldEnd(bytes, at, mark);
      if (at < 0) {
        this.fieldCount = first;
        return -1;
      }
      if (this.fieldCount + 1 >= this.starts.length) this.growStarts();
      this.starts[this.fieldCount++] = at + 1;
      if (at >= bytes.length) {
        this.fields.endsWithLineEnd = false;
        return bytes.length;
      }
      if (bytes[at] !== mark) return this.pastLineEnd(at);
      at++;
    }
  }

  /** A row that may hold quotes or braces. Where its fields are plain spans it is kept as such, else as strings. */
  private carefulRow(from: number, hasBraces: boolean): number {
    const { bytes, mark } = this;
    const first = this.fieldCount;
    const cells: string[] = [];
    let isPlain = true;
    let at = from;
    for (;;) {
      const close = bytes[at] === QUOTE ? this.closingQuote(at) : -1;
      if (close > 0) {
        const inner = bytes.toString("utf8", at + 1, close);
        if (inner.includes("\n")) {
          isPlain = false;
          this.line += inner.split("\n").length - 1;
        }
        if (inner.includes('""')) isPlain = false;
        cells.push(inner.replaceAll('""', '"'));
        at = close + 1;
      } else {
        if (bytes[at] === QUOTE) {
          this.fields.malformed.add(this.count);
          isPlain = false;
        }
        const end = this.fieldEnd(at);
        cells.push(bytes.toString("utf8", at, end));
        at = end;
      }
      if (this.fieldCount + 1 >= this.starts.length) this.growStarts();
      this.starts[this.fieldCount++] = at + 1;
      if (bytes[at] !== mark || at >= bytes.length) break;
      at++;
    }
    const joined = hasBraces ? joinBraces(cells, String.fromCharCode(mark)) : cells;
    if (!isPlain || joined !== cells) {
      this.fields.apart.set(this.count, joined);
      this.fieldCount = first + 1;
      this.starts[first] = at + 1;
    }
    if (at < bytes.length) return this.pastLineEnd(at);
    this.fields.endsWithLineEnd = false;
    return bytes.length;
  }

  private pastLineEnd(at: number): number {
    return at + (this.bytes[at] === CR && this.bytes[at + 1] === LF ? 2 : 1);
  }

  private fieldEnd(from: number): number {
    let at = from;
    while (at < this.bytes.length && this.special[this.bytes[at] as number] === 0) at++;
    return at;
  }

  /** Index of the quote that closes a field opened at `from`, or -1. */
  private closingQuote(from: number): number {
    const { bytes, mark } = this;
    const stop = Math.min(bytes.length, from + 1000);
    for (let i = from + 1; i < stop; i++) {
      if (bytes[i] !== QUOTE) continue;
      const next = bytes[i + 1];
      if (next === QUOTE) i++;
      else if (i + 1 >= bytes.length || next === mark || next === LF || next === CR) return i;
      else return -1;
    }
    return -1;
  }

  private grow(rows: number): void {
    if (this.count + rows >= this.lines.length) {
      this.lines = enlarged(this.lines);
      this.rowFirst = enlarged(this.rowFirst);
    }
    if (this.fieldCount + rows >= this.starts.length) this.growStarts();
  }

  private growStarts(): void {
    this.starts = enlarged(this.starts);
  }
}

function enlarged(array: Int32Array): Int32Array {
  const larger = new Int32Array(array.length * 2);
  larger.set(array);
  return larger;
}

/** Status words in braces (`{alarm,unacknowledged}`) are one field though nobody quotes them. Returns `cells` itself when there are none. */
function joinBraces(cells: string[], delimiter: string): string[] {
  let joined: string[] | null = null;
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i] as string;
    let close = i;
    if (cell.includes("{") && !cell.includes("}")) {
      const found = cells.findIndex((other, k) => k > i && other.includes("}"));
      if (found > i && !cells.slice(i + 1, found).some((other) => other.includes("{"))) close = found;
    }
    if (close > i) joined ??= cells.slice(0, i);
    joined?.push(cells.slice(i, close + 1).join(delimiter));
    i = close;
  }
  return joined ?? cells;
}
