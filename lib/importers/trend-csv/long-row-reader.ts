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
  /** The value of the row that was read last. */
  readonly value = new Float64Array(1);
  private readonly number = new ByteNumber();
  private readonly fields: FieldNames;
  private readonly unitTexts: FieldNames;
  private readonly unitOf: number[] = [];

  constructor(private readonly table: LongTable) {
    this.fields = new FieldNames(table.bytes);
    this.unitTexts = new FieldNames(table.bytes);
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

  private keepsUnit(from: number, to: number): boolean {
    const id = this.unitTexts.idOf(from, to);
    this.unitOf[this.point] ??= id;
    return this.unitOf[this.point] === id;
  }
}
