import { areEqual } from "./byte-compare";
import { ByteNumber } from "./byte-number";
import { FieldNames } from "./field-names";
import { GoodStatus } from "./good-status";
import { fieldEnd, withoutQuotes } from "./plain-field";
import type { RegularStamps } from "./regular-stamps";
import { QUOTE } from "./rows";

const CR = 13;
const LF = 10;

/**
 * Columns of a regular long table. Unit: the column whose text must not change for a point, if there is one; status: the
 * one that must say that all is well.
 */
export type LongColumns = {
  stamp: number;
  name: number;
  value: number;
  unit: number | null;
  status: number | null;
  width: number;
};

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
 * Where the values at one instant go: that of point `k` to `k * sweeps + sweep`; by point, the most decimals of its values
 * and how many there are.
 */
export type Sweep = {
  values: Float64Array;
  sweeps: number;
  sweep: number;
  decimals: Int32Array;
  counts: Int32Array;
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
  private valueEnd = 0;
  /** Where the stamp read last stands, quotes about it included, and how long it is. */
  private stampFrom = 0;
  private stampLength = 0;
  /** Names of the points, in the order they came. */
  readonly names: string[] = [];
  private readonly seenNames = new Set<string>();
  private readonly number = new ByteNumber();
  private readonly fields: FieldNames;
  private readonly unitTexts: FieldNames;
  private readonly unitOf: number[] = [];
  private readonly status: GoodStatus;
  /** By point: what stood behind its value in the row that was read last, from its delimiter to the end of the line. */
  private tailFrom = new Int32Array(64);
  private tailLength = new Int32Array(64).fill(-1);
  private readonly view: DataView;

  constructor(private readonly table: LongTable) {
    this.fields = new FieldNames(table.bytes);
    this.unitTexts = new FieldNames(table.bytes);
    this.status = new GoodStatus(table.bytes);
    this.view = new DataView(table.bytes.buffer, table.bytes.byteOffset, table.bytes.length);
  }

  /** Unit texts by point; null when the table has no such column. */
  get units(): string[] | null {
    const { unit } = this.table.columns;
    if (unit === null) return null;
    return this.names.map((_, id) => withoutQuotes(this.unitTexts.texts[this.unitOf[id] ?? -1] ?? ""));
  }

  /** False when there is no further row, or it is not plain. */
  next(): boolean {
    const { bytes, columns, mark, stamps, firstLine } = this.table;
    const { length } = bytes;
    const { stamp, name, value, width } = columns;
    let at = this.end;
    let valueEnd = 0;
    if (at >= length) return false;
    for (let column = 0; column < width; column++) {
      const from = at;
      if (column === value) {
        if (!this.readValue(from)) return false;
        at = valueEnd = this.valueEnd;
      } else if (column === stamp) {
        stamps.readField(from, mark, firstLine + this.rows);
        if (Number.isNaN(stamps.utc)) return false;
        at = stamps.end;
        this.stampFrom = from;
        this.stampLength = at - from;
      } else if (column === name) {
        if (!this.readName(from)) return false;
        at = this.fields.end;
      } else {
        at = fieldEnd(bytes, from, mark);
        if (at < 0) return false;
        if (column === columns.unit && !this.keepsUnit(from, at)) return false;
        if (column === columns.status && !this.status.says(from, at)) return false;
      }
      if (column < width - 1 && bytes[at++] !== mark) return false;
    }
    this.keepTail(valueEnd, at);
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) return false;
      at++;
    }
    this.end = Math.min(at, length);
    this.rows++;
    return true;
  }

  private readValue(from: number): boolean {
    const { bytes, decimal } = this.table;
    const { number, value } = this;
    const isQuoted = bytes[from] === QUOTE;
    const end = number.readInto(value, 0, bytes, isQuoted ? from + 1 : from, decimal);
    this.decimals = number.decimals;
    this.valueEnd = isQuoted ? end + 1 : end;
    return !Number.isNaN(value[0]) && (!isQuoted || bytes[end] === QUOTE);
  }

  private readName(from: number): boolean {
    const { fields, names } = this;
    this.point = fields.idAt(from, this.table.mark);
    if (this.point < 0 || fields.end === from) return false;
    if (this.point < names.length) return true;
    const name = withoutQuotes(fields.texts[this.point] as string).trim();
    // A name that is written in two ways is one point all the same: the long way to read knows that.
    if (name === "" || this.seenNames.has(name)) return false;
    this.seenNames.add(name);
    names.push(name);
    return true;
  }

  /**
   * Reads on over rows that are as expected: the stamp of the last row, then the point that came after it the last time,
   * then a number, then what stood behind the point's number the last time. Puts the values where NaN stands. The first
   * row that is otherwise is left to `next`, which takes three times as long; so are tables with other columns before.
   */
  readAlike({ values, sweeps, sweep, decimals, counts }: Sweep): void {
    const { bytes, columns, mark, decimal } = this.table;
    if (columns.stamp !== 0 || columns.name !== 1 || columns.value !== 2) return;
    const { number, fields, view, tailFrom, tailLength } = this;
    const { followers, starts, lengths } = fields;
    const { stampFrom, stampLength } = this;
    const most = bytes.length - stampLength;
    let at = this.end;
    let point = fields.last;
    while (at < most && bytes[at + stampLength] === mark && areEqual(view, stampFrom, at, stampLength)) {
      const next = followers[point] as number;
      const cell = next * sweeps + sweep;
      if (next < 0 || !Number.isNaN(values[cell] as number)) break;
      const from = at + stampLength + 1;
      const length = lengths[next] as number;
      if (bytes[from + length] !== mark || !areEqual(view, starts[next] as number, from, length)) break;
      const isQuoted = bytes[from + length + 1] === QUOTE;
      let end = number.readInto(values, cell, bytes, from + length + (isQuoted ? 2 : 1), decimal);
      const isClosed = !isQuoted || bytes[end++] === QUOTE;
      const tail = tailLength[next] as number;
      if (tail > 0 && end + tail < bytes.length && areEqual(view, tailFrom[next] as number, end, tail)) end += tail;
      if (bytes[end] === CR) end++;
      // A tail of another kind leaves us before no line end.
      if (bytes[end] !== LF || tail < 0 || !isClosed) values[cell] = Number.NaN;
      if (Number.isNaN(values[cell] as number)) break;
      if (number.decimals > (decimals[next] as number)) decimals[next] = number.decimals;
      counts[next] = (counts[next] as number) + 1;
      at = end + 1;
      point = next;
      this.rows++;
    }
    this.end = at;
    this.point = point;
    fields.last = point;
  }

  private keepTail(from: number, to: number): void {
    if (this.point >= this.tailFrom.length) {
      const [before, lengths] = [this.tailFrom, this.tailLength];
      this.tailFrom = new Int32Array(2 * this.point);
      this.tailLength = new Int32Array(2 * this.point).fill(-1);
      this.tailFrom.set(before);
      this.tailLength.set(lengths);
    }
    this.tailFrom[this.point] = from;
    this.tailLength[this.point] = to - from;
  }

  private keepsUnit(from: number, to: number): boolean {
    const id = this.unitTexts.idOf(from, to);
    this.unitOf[this.point] ??= id;
    return this.unitOf[this.point] === id;
  }
}
