import { areEqual } from "./byte-compare";
import { ByteNumber } from "./byte-number";
import { FieldNames } from "./field-names";
import type { RegularStamps } from "./regular-stamps";

const CR = 13;
const LF = 10;

/** Columns of a regular long table. Unit: the column whose text must not change for a point, if there is one. */
export type LongColumns = { stamp: number; name: number; value: number; unit: number | null; width: number };

export type LongTable = {
  bytes: Buffer;
  columns: LongColumns;
  /** Codes of the delimiter and the decimal mark. */
  mark: number;
  decimal: number;
  stamps: RegularStamps;
  firstLine: number;
};

/**
 * Reads rows of a table of one row a reading as long as they are plain: stamps written alike, a name, a number. What a row
 * holds stands in the fields: a call that returned it would make an object for each of millions of rows.
 */
export class LongRowReader {
  /** Behind the row that was read last. */
  end = 0;
  /** Rows read. */
  rows = 0;
  /** Of the row that was read last: its point (index into `names`); its instant stands in the stamps' `utc`. */
  point = 0;
  /** The value of the row that was read last, and its decimals. */
  readonly value = new Float64Array(1);
  decimals = 0;
  private readonly number = new ByteNumber();
  private readonly fields: FieldNames;
  private readonly unitTexts: FieldNames;
  private readonly unitOf: number[] = [];
  private readonly view: DataView;

  constructor(private readonly table: LongTable) {
    this.fields = new FieldNames(table.bytes);
    this.unitTexts = new FieldNames(table.bytes);
    this.view = new DataView(table.bytes.buffer, table.bytes.byteOffset, table.bytes.length);
  }

  get names(): string[] {
    return this.fields.texts;
  }

  /** Unit texts by point; null when the table has no such column. */
  get units(): string[] | null {
    const { unit } = this.table.columns;
    return unit === null ? null : this.names.map((_, id) => this.unitTexts.texts[this.unitOf[id] ?? -1] ?? "");
  }

  /** False when there is no further row, or it is not plain. */
  next(): boolean {
    const { bytes, columns, mark, decimal, stamps, firstLine } = this.table;
    const { length } = bytes;
    const { stamp, name, value, width } = columns;
    let at = this.end;
    if (at >= length) return false;
    for (let column = 0; column < width; column++) {
      if (column === value) {
        this.number.readInto(this.value, 0, bytes, at, decimal);
        if (Number.isNaN(this.value[0])) return false;
        this.decimals = this.number.decimals;
        at = this.number.end;
      } else if (column === stamp) {
        stamps.readAt(at, mark, firstLine + this.rows);
        if (Number.isNaN(stamps.utc)) return false;
        at = stamps.end;
      } else if (column === name) {
        this.point = this.fields.idAt(at, mark);
        if (this.fields.end === at) return false;
        at = this.fields.end;
      } else {
        const from = at;
        while (at < length && bytes[at] !== mark && bytes[at] !== LF && bytes[at] !== CR) at++;
        if (column === columns.unit && !this.keepsUnit(from, at)) return false;
      }
      if (column < width - 1 && bytes[at++] !== mark) return false;
    }
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) return false;
      at++;
    }
    this.end = Math.min(at, length);
    this.rows++;
    return true;
  }

  /**
   * Reads on over rows that are as expected: the stamp of the last row, then the point that came after it the last time,
   * then a number. Puts the values into `out`, that of point `k` at `k * stride + place`, as long as NaN stands there, and
   * the most decimals of each point into `decimals`. The first row that is otherwise is left to `next`, which takes three
   * times as long; so are tables with more columns.
   */
  readAlike(out: Float64Array, stride: number, place: number, decimals: Int32Array): void {
    const { bytes, columns, mark, decimal, stamps } = this.table;
    if (columns.stamp !== 0 || columns.name !== 1 || columns.value !== 2 || columns.width !== 3) return;
    const { number, fields, view } = this;
    const { followers, starts, lengths } = fields;
    const { lastFrom, lastLength } = stamps;
    const most = bytes.length - lastLength;
    let at = this.end;
    let point = fields.last;
    while (at < most && bytes[at + lastLength] === mark && areEqual(view, lastFrom, at, lastLength)) {
      const next = followers[point] as number;
      const cell = next * stride + place;
      if (next < 0 || !Number.isNaN(out[cell] as number)) break;
      const from = at + lastLength + 1;
      const length = lengths[next] as number;
      if (bytes[from + length] !== mark || !areEqual(view, starts[next] as number, from, length)) break;
      number.readInto(out, cell, bytes, from + length + 1, decimal);
      let { end } = number;
      if (bytes[end] === CR) end++;
      if (bytes[end] !== LF) out[cell] = Number.NaN;
      if (Number.isNaN(out[cell] as number)) break;
      if (number.decimals > (decimals[next] as number)) decimals[next] = number.decimals;
      at = end + 1;
      point = next;
      this.rows++;
    }
    this.end = at;
    this.point = point;
    fields.last = point;
  }

  private keepsUnit(from: number, to: number): boolean {
    const id = this.unitTexts.idOf(from, to);
    this.unitOf[this.point] ??= id;
    return this.unitOf[this.point] === id;
  }
}
