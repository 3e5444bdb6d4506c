import { ByteNumber } from "./byte-number";
import { FieldNames } from "./field-names";
import type { RegularStamps } from "./regular-stamps";
import { countLines } from "./scan-wide";
import type { Scratch } from "./scratch";

const CR = 13;
const LF = 10;

/** Columns of a regular long table. Unit: the column whose text must not change for a point, if there is one. */
export type LongColumns = { stamp: number; name: number; value: number; unit: number | null; width: number };

export type LongScan = {
  rows: number;
  names: string[];
  /** Unit texts by point; null when the table has no such column. */
  units: string[] | null;
  /** By row: point (index into `names`), instant [UTC seconds] and value. Good until the next scan. */
  point: Int32Array;
  utc: Float64Array;
  values: Float64Array;
};

/**
 * Reads rows of a table of one row a reading that are plain throughout: stamps written alike, a name, a number. Null as
 * soon as one is not: such rows are read the long way, which knows more.
 */
export function scanLong(
  bytes: Buffer,
  columns: LongColumns,
  how: { mark: number; decimal: number; stamps: RegularStamps; firstLine: number; scratch: Scratch },
): LongScan | null {
  const { mark, decimal, stamps, firstLine, scratch } = how;
  const rows = countLines(bytes);
  const point = scratch.int32("point", rows);
  const utc = scratch.float64("utc", rows);
  const values = scratch.float64("values", rows);
  const number = new ByteNumber();
  const names = new FieldNames();
  const unitNames = new FieldNames();
  const unitOf: number[] = [];
  const { length } = bytes;
  const { stamp, name, value, unit, width } = columns;
  let at = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < width; column++) {
      if (column === value) {
        const read = number.read(bytes, at, decimal);
        if (Number.isNaN(read)) return null;
        values[row] = read;
        at = number.end;
      } else if (column === stamp) {
        const instant = stamps.readAt(bytes, at, mark, firstLine + row);
        if (Number.isNaN(instant)) return null;
        utc[row] = instant;
        at = stamps.end;
      } else if (column === name) {
        const id = names.idAt(bytes, at, mark);
        if (names.end === at) return null;
        point[row] = id;
        at = names.end;
      } else {
        const from = at;
        while (at < length && bytes[at] !== mark && bytes[at] !== LF && bytes[at] !== CR) at++;
        if (column === unit) {
          const id = unitNames.idOf(bytes, from, at);
          const own = point[row] as number;
          unitOf[own] ??= id;
          if (unitOf[own] !== id) return null;
        }
      }
      if (column < width - 1) {
        if (bytes[at] !== mark) return null;
        at++;
      }
    }
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) return null;
      at++;
    }
  }
  if (at < length) return null;
  const units = unit === null ? null : names.texts.map((_, id) => unitNames.texts[unitOf[id] ?? -1] ?? "");
  return { rows, names: names.texts, units, point, utc, values };
}
