import { LongRowReader, type LongTable } from "./long-row-reader";
import type { Scratch } from "./scratch";

type Scanned = {
  /** Rows read, and the byte behind them. */
  taken: number;
  end: number;
  names: string[];
  /** Unit texts by point; null when the table has no such column. */
  units: string[] | null;
};

/** Rows of a long table one by one. Good until the next scan. */
export type LongScan = Scanned & {
  /** By row: point (index into `names`), instant [UTC seconds] and value. */
  point: Int32Array;
  utc: Float64Array;
  values: Float64Array;
};

/** Rows of a long table whose points come together at each instant, as the rows of a wide one. Good until the next scan. */
export type SweptScan = Scanned & {
  /** Instants, ascending [UTC seconds]. */
  utc: Float64Array;
  /** Values by point: those of point `k` begin at `k * sweeps`; NaN where it has none at an instant. */
  values: Float64Array;
  /** Most decimals of each point's values. */
  decimals: Int32Array;
  /** Instants at which each point has no value. */
  blanks: Int32Array;
  sweeps: number;
  /** False when a row that is not plain follows. */
  isPlain: boolean;
};

/** Bytes of the shortest row that is thought of: a stamp, a name and a value of one character each. */
const LEAST_ROW_BYTES = 6;
/** Bytes of the file for which there is room for one value of a point at an instant. */
const BYTES_PER_CELL = 12;
/** Least share of the points' values at the instants that makes it worth laying them out by instant. */
const LEAST_SHARE = 0.5;

/** Reads plain rows. The first that is not, and what follows, is for the long way to read, which knows more. */
export function scanLong(table: LongTable, scratch: Scratch): LongScan {
  const room = Math.ceil(table.bytes.length / LEAST_ROW_BYTES) + 1;
  const point = scratch.int32("point", room);
  const utc = scratch.float64("utc", room);
  const values = scratch.float64("values", room);
  const reader = new LongRowReader(table);
  const { stamps } = table;
  let taken = 0;
  while (reader.next()) {
    point[taken] = reader.point;
    utc[taken] = stamps.utc;
    values[taken++] = reader.value[0] as number;
  }
  return { taken, end: reader.end, names: reader.names, units: reader.units, point, utc, values };
}

/**
 * Reads plain rows of a table whose instants ascend, laid out by point and instant. Stops before the instant that there
 * is no room for or that holds a row which is not plain, and before the last one, which may go on behind the bytes, unless
 * they are the `last` of the file. Null when few of the `points` (all that the file is known to have) have a value at an
 * instant: such rows are better read one by one.
 */
export function scanSwept(table: LongTable, points: number, isLast: boolean, scratch: Scratch): SweptScan | null {
  const sweeps = Math.floor(table.bytes.length / BYTES_PER_CELL / points);
  if (sweeps < 2) return null;
  const utc = scratch.float64("utc", sweeps);
  const values = scratch.float64("values", points * sweeps).fill(Number.NaN);
  const decimals = scratch.int32("decimals", points).fill(0);
  const counts = scratch.int32("counts", points).fill(0);
  const reader = new LongRowReader(table);
  const { stamps } = table;
  let before = Number.NEGATIVE_INFINITY;
  let sweep = -1;
  let hasRoom = true;
  let rows = 0;
  let rowsEnd = 0;
  // Instants that are whole, their rows, and the byte behind these.
  let whole = 0;
  let taken = 0;
  let end = 0;
  while (reader.next()) {
    if (stamps.utc !== before) {
      whole = sweep + 1;
      taken = rows;
      end = rowsEnd;
      hasRoom = whole < sweeps;
      if (!hasRoom || stamps.utc < before) break;
      before = stamps.utc;
      utc[++sweep] = before;
    }
    const cell = reader.point * sweeps + sweep;
    // A point that is new, or that has a second value at the instant, needs a closer look.
    if (reader.point >= points || !Number.isNaN(values[cell] as number)) break;
    values[cell] = reader.value[0] as number;
    decimals[reader.point] = Math.max(decimals[reader.point] as number, reader.decimals);
    counts[reader.point] = (counts[reader.point] as number) + 1;
    reader.readAlike({ values, sweeps, sweep, decimals, counts });
    rows = reader.rows;
    rowsEnd = reader.end;
  }
  const readAll = rowsEnd === table.bytes.length;
  if (readAll && (isLast || taken === 0)) {
    whole = sweep + 1;
    taken = rows;
    end = rowsEnd;
  }
  if (taken < LEAST_SHARE * whole * points) return null;
  // The values of an instant that is left for later were counted.
  const hasRestOf = (k: number): boolean => sweep >= whole && !Number.isNaN(values[k * sweeps + sweep] as number);
  return {
    taken,
    end,
    names: reader.names,
    units: reader.units,
    utc: utc.subarray(0, whole),
    values,
    decimals,
    blanks: counts.map((count, k) => whole - (hasRestOf(k) ? count - 1 : count)),
    sweeps,
    isPlain: readAll || !hasRoom,
  };
}
