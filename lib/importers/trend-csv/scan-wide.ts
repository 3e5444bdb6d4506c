import { ByteNumber } from "./byte-number";
import { GoodStatus } from "./good-status";
import { fieldEnd } from "./plain-field";
import type { RegularStamps } from "./regular-stamps";
import { QUOTE } from "./rows";
import type { Scratch } from "./scratch";

const CR = 13;
const LF = 10;

/** What each column of a regular table is: the stamp, a point (by number from 0), a status, or nothing that is kept. */
export type ColumnRoles = Int16Array;
export const STAMP = -1;
export const SKIPPED = -2;
export const STATUS = -3;

export type WideScan = {
  /** Rows read, and the byte behind them: fewer than there are when one of them is not plain. */
  taken: number;
  end: number;
  /** Rows that the values of a column have room for. */
  rows: number;
  /** Instants of the rows, ascending [UTC seconds]. Good until the next scan, as the values. */
  utc: Float64Array;
  /** Values by column: those of column `k` begin at `k * rows`; NaN where a cell is empty. Good until the next scan. */
  values: Float64Array;
  /** Most decimals of each column's cells, in rows that were taken or tried. Good until the next scan. */
  decimals: Int32Array;
  /** Empty cells of each column; null where nobody counted. Good until the next scan. */
  blanks: Int32Array | null;
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
 * Reads rows of a wide table as long as they are plain: stamps written alike and ascending, each cell a number or empty,
 * each status good, as many fields as columns. The first that is not, and what follows, is for the long way to read, which
 * knows more.
 */
export function scanWide(table: WideTable): WideScan {
  const { bytes, mark, decimal, roles, points, stamps, firstLine, scratch } = table;
  const rows = countLines(bytes);
  const utc = scratch.float64("utc", rows);
  const values = scratch.float64("values", rows * points);
  const decimals = scratch.int32("decimals", points).fill(0);
  const blanks = scratch.int32("blanks", points).fill(0);
  const number = new ByteNumber();
  const status = new GoodStatus(bytes);
  const { length } = bytes;
  const lastColumn = roles.length - 1;
  let at = 0;
  let before = Number.NEGATIVE_INFINITY;
  let taken = 0;
  // Behind the last row, and behind the one before it.
  let end = 0;
  let endBefore = 0;
  reading: for (; taken < rows; taken++) {
    let filled = 0;
    for (let column = 0; column <= lastColumn; column++) {
      const role = roles[column] as number;
      if (role >= 0) {
        const cell = role * rows + taken;
        const isQuoted = bytes[at] === QUOTE;
        if (isQuoted) at++;
        const behind = number.readInto(values, cell, bytes, at, decimal);
        if (behind !== at) {
          if (Number.isNaN(values[cell])) break reading;
          if (number.decimals > (decimals[role] as number)) decimals[role] = number.decimals;
          filled++;
        } else blanks[role] = (blanks[role] as number) + 1;
        at = behind;
        if (isQuoted && bytes[at++] !== QUOTE) break reading;
      } else if (role === STAMP) {
        stamps.readField(at, mark, firstLine + taken);
        const instant = stamps.utc;
        // Also false for NaN.
        if (!(instant > before)) break reading;
        utc[taken] = instant;
        before = instant;
        at = stamps.end;
      } else {
        const from = at;
        at = fieldEnd(bytes, from, mark);
        if (at < 0 || (role === STATUS && !status.says(from, at))) break reading;
      }
      if (column < lastColumn && bytes[at++] !== mark) break reading;
    }
    if (filled === 0) break;
    if (at < length) {
      if (bytes[at] === CR) at++;
      if (at < length && bytes[at] !== LF) break;
      at++;
    }
    endBefore = end;
    end = Math.min(at, length);
  }
  // A row that was tried and is not taken has left its mark on the counts.
  const isCounted = taken === rows;
  // What follows may repeat the last row, so that the two have to be seen together.
  if (taken > 0 && taken < rows) {
    taken--;
    end = endBefore;
  }
  return { taken, end, rows, utc: utc.subarray(0, taken), values, decimals, blanks: isCounted ? blanks : null };
}

/** Lines that end, and one that does not. */
function countLines(bytes: Buffer): number {
  let count = 0;
  let at = bytes.indexOf(LF);
  while (at >= 0) {
    count++;
    at = bytes.indexOf(LF, at + 1);
  }
  return bytes.length > 0 && bytes[bytes.length - 1] !== LF ? count + 1 : count;
}
