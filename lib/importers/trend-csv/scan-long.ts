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
  /** Rows read, and the byte behind them: fewer than there are when one of them is not plain. */
  taken: number;
  end: number;
  names: string[];
  /** Unit texts by point; null when the table has no such column. */
  units: string[] | null;
  /** By row: point (index into `names`), instant [UTC seconds] and value. Good until the next scan. */
  point: Int32Array;
  utc: Float64Array;
  values: Float64Array;
};

/**
 * Reads rows of a table of one row a reading as long as they are plain: stamps written alike, a name, a number. The first
 * that is not, and what follows, is for the long way to read, which knows more.
 */
export function scanLong(
  bytes: Buffer,
  columns: LongColumns,
  how: { mark: number; decimal: number; stamps: RegularStamps; firstLine: number; scratch: Scratch },
): LongScan {
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
  let taken = 0;
  let end = 0;
  reading: for (; taken < rows; taken++) {
    for (let column = 0; column < width; column++) {
      if (column === value) {
        const read = number.read(bytes, at, decimal);
        if (Number.isNaN(read)) break reading;
        values[taken] = read;
        at = number.end;
      } else if (column === stamp) {
        const instant = stamps.readAt(bytes, at, mark, firstLine + taken);
        if (Number.isNaN(instant)) break reading;
        utc[taken] = instant;
        at = stamps.end;
      } else if (column === name) {
        const id = names.idAt(bytes, at, mark);
        if (names.end === at) break reading;
        point[taken] = id;
        at = names.end;
      } else {
        const from = at;
        while (at < length && bytes[at] !== mark && bytes[at] !== LF && bytes[at] !== CR) at++;
        if (column === unit) {
          const id = unitNames.idOf(bytes, from, at);
          const own = point[taken] as number;
          unitOf[own] ??= id;
          if (unitOf[own] !== id) break reading;
        }
      }
      if (column < width - 1 && bytes[at++] !== mark) break reading;
    }
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) break;
      at++;
    }
    end = Math.min(at, length);
  }
  const units = unit === null ? null : names.texts.map((_, id) => unitNames.texts[unitOf[id] ?? -1] ?? "");
  return { taken, end, names: names.texts, units, point, utc, values };
}
