/**
 * Rows of a delimited text, kept as the bytes they came in: a cell becomes a string only where it is asked for, so that
 * a table of millions of numbers costs no more than its bytes and one offset a field.
 */
export class Rows {
  /** Rows (by index) with a quote that never closes. */
  readonly malformed: ReadonlySet<number>;
  /** False when the text ends in the middle of a line, as a broken download does. */
  readonly endsWithLineEnd: boolean;
  /** Physical line (1-based) on which each row begins. */
  readonly lines: Int32Array;
  private rowCount: number;

  constructor(readonly fields: Fields) {
    this.malformed = fields.malformed;
    this.endsWithLineEnd = fields.endsWithLineEnd;
    this.lines = fields.lines;
    this.rowCount = fields.count;
  }

  get count(): number {
    return this.rowCount;
  }

  /** Forgets the rows from `count` on. */
  keepFirst(count: number): void {
    this.rowCount = Math.min(this.rowCount, count);
  }

  width(row: number): number {
    const { apart, rowFirst } = this.fields;
    return apart.get(row)?.length ?? (rowFirst[row + 1] as number) - (rowFirst[row] as number) - 1;
  }

  /** Text of a cell; empty where the row has no such field. */
  cell(row: number, column: number): string {
    const { apart, rowFirst, starts } = this.fields;
    const cells = apart.get(row);
    if (cells) return cells[column] ?? "";
    const at = (rowFirst[row] as number) + column;
    if (column < 0 || at + 1 >= (rowFirst[row + 1] as number)) return "";
    return this.text(starts[at] as number, (starts[at + 1] as number) - 1);
  }

  cellsOf(row: number): string[] {
    const cells = this.fields.apart.get(row);
    if (cells) return cells;
    return Array.from({ length: this.width(row) }, (_, column) => this.cell(row, column));
  }

  /** True for a line with nothing on it. */
  isEmptyLine(row: number): boolean {
    return this.width(row) === 1 && this.cell(row, 0) === "";
  }

  /** Physical line on which the row after a row begins. */
  lineAfter(row: number): number {
    return row + 1 < this.fields.count ? (this.lines[row + 1] as number) : this.fields.nextLine;
  }

  /** Byte at which a row begins. */
  startOf(row: number): number {
    const { rowFirst, starts, length } = this.fields;
    return row >= this.fields.count ? length : (starts[rowFirst[row] as number] as number);
  }

  /** Text of a span of bytes, without the quotes about a field. */
  private text(from: number, to: number): string {
    const { bytes, ascii, quotes } = this.fields;
    const quoted = quotes && to - from >= 2 && bytes[from] === QUOTE && bytes[to - 1] === QUOTE;
    const [start, end] = quoted ? [from + 1, to - 1] : [from, to];
    return bytes.toString(ascii ? "latin1" : "utf8", start, end);
  }
}

/** Where the fields of every row stand. Field `k` of row `r` ends one byte before field `k + 1` begins. */
export type Fields = {
  bytes: Buffer;
  /** Bytes that hold rows. */
  length: number;
  count: number;
  /** Index into `starts` of each row's first field; a row's last entry there is where a next field would begin. */
  rowFirst: Int32Array;
  starts: Int32Array;
  lines: Int32Array;
  /** Physical line behind the last row. */
  nextLine: number;
  /** Cells of the rows whose fields are not plain spans of bytes. */
  apart: Map<number, string[]>;
  malformed: Set<number>;
  endsWithLineEnd: boolean;
  /** True when no byte is above 127. */
  ascii: boolean;
  /** True when a field may stand in quotes. */
  quotes: boolean;
};

export const QUOTE = 34;

/** First byte of a field of a row kept as bytes, and the one behind its last, without quotes about it. */
export function startOf({ bytes, starts, quotes }: Fields, field: number): number {
  const from = starts[field] as number;
  return quotes && bytes[from] === QUOTE ? from + 1 : from;
}

export function endOf({ bytes, starts, quotes }: Fields, field: number): number {
  const to = (starts[field + 1] as number) - 1;
  return quotes && bytes[to - 1] === QUOTE && to - (starts[field] as number) >= 2 ? to - 1 : to;
}
