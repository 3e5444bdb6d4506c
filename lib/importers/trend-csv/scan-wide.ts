import { ByteNumber } from "./byte-number";
import type { RegularStamps } from "./regular-stamps";
import type { Scratch } from "./scratch";

const CR = 13;
const LF = 10;

/** What each column of a regular table is: the stamp, a point (by number from 0), or nothing that is kept. */
export type ColumnRoles = Int16Array;
export const STAMP = -1;
export const SKIPPED = -2;

export type WideScan = {
  rows: number;
  /** Instants of the rows, ascending [UTC seconds]. Good until the next scan, as the values. */
  utc: Float64Array;
  /** Values by column: those of column `k` begin at `k * rows`; NaN where a cell is empty. Good until the next scan. */
  values: Float64Array;
};

export type WideTable = {
  bytes: Buffer;
  /** Codes of the delimiter and the decimal mark. */
  mark: number;
  decimal: number;
  roles: ColumnRoles;
  points: number;
  stamps: RegularStamps;
  firstLine: number;
  scratch: Scratch;
};

/**
 * Reads rows of a wide table that are plain throughout: stamps written alike and ascending, each cell a number or empty,
 * as many fields as columns. Null as soon as one is not: such rows are read the long way, which knows more.
 */
export function scanWide(table: WideTable): WideScan | null {
  const { bytes, mark, decimal, roles, points, stamps, firstLine, scratch } = table;
  const rows = countLines(bytes);
  const utc = scratch.float64("utc", rows);
  const values = scratch.float64("values", rows * points);
  const number = new ByteNumber();
  const { length } = bytes;
  const lastColumn = roles.length - 1;
  let at = 0;
  let before = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < rows; row++) {
    let filled = 0;
    for (let column = 0; column <= lastColumn; column++) {
      const role = roles[column] as number;
      if (role >= 0) {
        const value = number.read(bytes, at, decimal);
        if (number.end === at) values[role * rows + row] = Number.NaN;
        else if (!Number.isNaN(value)) {
          values[role * rows + row] = value;
          filled++;
        } else return null;
        at = number.end;
      } else {
        if (role === STAMP) {
          const instant = stamps.readAt(bytes, at, mark, firstLine + row);
          // Also false for NaN.
          if (!(instant > before)) return null;
          utc[row] = instant;
          before = instant;
          at = stamps.end;
        } else while (at < length && bytes[at] !== mark && bytes[at] !== LF && bytes[at] !== CR) at++;
      }
      if (column < lastColumn) {
        if (bytes[at] !== mark) return null;
        at++;
      }
    }
    if (filled === 0) return null;
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) return null;
      at++;
    }
  }
  return at >= length ? { rows, utc, values } : null;
}

/** Lines that end, and one that does not. */
export function countLines(bytes: Buffer): number {
  let count = 0;
  let at = bytes.indexOf(LF);
  while (at >= 0) {
    count++;
    at = bytes.indexOf(LF, at + 1);
  }
  return bytes.length > 0 && bytes[bytes.length - 1] !== LF ? count + 1 : count;
}
