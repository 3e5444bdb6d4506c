import { zoneTable } from "@/lib/time/zone-table";
import type { FileFacts } from "./file-facts";
import type { FileTally } from "./file-tally";
import type { LongColumns, LongTable } from "./long-row-reader";
import { decimalOf } from "./number-format";
import type { Continuation } from "./read-part";
import { dateColumnOf } from "./read-table";
import { type RegularPoint, settleRegular } from "./regular-points";
import { RegularStamps } from "./regular-stamps";
import { type LongScan, type SweptScan, scanLong, scanSwept } from "./scan-long";
import { SKIPPED, STAMP, STATUS, scanWide, type WideScan } from "./scan-wide";
import type { Scratch } from "./scratch";
import type { PartPoint, TrendAnswers } from "./trend-file";
import { zoneWords } from "./zone-words";

export type RegularInput = {
  bytes: Buffer;
  delimiter: string;
  firstLine: number;
  isLast: boolean;
  continuation: Continuation;
  timeZone: string;
  answers: TrendAnswers;
  facts: Partial<FileFacts>;
  tally: FileTally;
  scratch: Scratch;
};

export type RegularPart = {
  points: PartPoint[];
  rows: number;
  /** Behind the last row that was read. */
  end: number;
  /** False when a row follows that needs a closer look. */
  isPlain: boolean;
};

/**
 * Reads the rows at the head of a part that are plain (numbers under the stamps of a table that is known) straight from
 * their bytes, and adds them to the tally as `readPart` would. Says how far that went; null, with nothing added, when the
 * first row needs a closer look already, or a value of any.
 */
export function readRegularPart(input: RegularInput): RegularPart | null {
  const { continuation, tally } = input;
  const found = (continuation.table.layout.long ? longPoints : widePoints)(input);
  const settled = found && settleRegular(found.points, input);
  if (!found || !settled) return null;
  found.stamps.tell(tally.dates);
  const { rows, end, isPlain } = found;
  return { points: tally.addRegular(settled, rows), rows, end, isPlain };
}

/** The stamps, when all are in one column of text and their form and order are known. */
function stampsOf({ bytes, continuation, timeZone, answers, tally }: RegularInput): RegularStamps | null {
  const { layout } = continuation.table;
  const [source] = continuation.times.sources;
  const form = tally.stampForms.get(0);
  const { order } = tally;
  if (continuation.times.sources.length !== 1 || source?.form !== "text" || !form) return null;
  if (order.status !== "known" && order.status !== "not-needed") return null;
  if (layout.offsetColumn !== null || layout.numericFlag || layout.statistics || layout.endSource) return null;
  return new RegularStamps(bytes, {
    form,
    order: order.status === "known" ? order.order : "mdy",
    zone: zoneTable(timeZone),
    words: zoneWords(timeZone),
    clock: answers.clock,
    saysUtc: layout.saysUtc,
  });
}

/** Code of the decimal mark; of no character while none was seen, so that the first one gets a closer look. */
const decimalCode = ({ facts, marks, decimal }: FileTally): number =>
  facts.decimal === undefined && decimalOf(marks, "") === null ? -1 : decimal.charCodeAt(0);

type Found = Omit<RegularPart, "points"> & { points: RegularPoint[]; stamps: RegularStamps };

function widePoints(input: RegularInput): Found | null {
  const { bytes, delimiter, firstLine, continuation, tally, scratch } = input;
  const stamps = stampsOf(input);
  const { layout, width } = continuation.table;
  const [group] = layout.groups;
  if (!stamps || layout.groups.length !== 1 || !group) return null;
  const roles = new Int16Array(width).fill(SKIPPED);
  roles[dateColumnOf(group.source)] = STAMP;
  group.values.forEach((value, k) => {
    roles[value.column] = k;
    if (value.statusColumn !== null) roles[value.statusColumn] = STATUS;
  });
  const scan = scanWide({
    bytes,
    mark: delimiter.charCodeAt(0),
    decimal: decimalCode(tally),
    roles,
    points: group.values.length,
    stamps,
    firstLine,
    scratch,
  });
  if (scan.taken === 0) return null;
  const { utc, values, decimals, blanks, rows: room } = scan;
  const points = columnsOf({ utc, values, decimals, blanks, room }, group.values, scratch).map(
    (point, k): RegularPoint => ({
      ...point,
      ascends: true,
      instants: utc,
      blanks: utc.length - point.ts.length,
      missing: (before) =>
        firstLine > before ? [] : firstBlanks(values.subarray(k * room, k * room + utc.length), firstLine),
    }),
  );
  return { rows: scan.taken, end: scan.end, isPlain: scan.end === bytes.length, points, stamps };
}

/** Values by column, those of column `k` from `k * room` on; NaN where a cell is empty. */
type Matrix = Pick<WideScan, "utc" | "values" | "decimals" | "blanks"> & { room: number };

/** Readings of all columns of a matrix: those without an empty cell as they lie there, sharing their instants. */
function columnsOf(
  { utc, values, decimals, blanks: counted, room }: Matrix,
  columns: readonly RegularPoint["column"][],
  scratch: Scratch,
): Pick<RegularPoint, "column" | "ts" | "values" | "among" | "decimals">[] {
  const rows = utc.length;
  const blanks = columns.map((_, k) => counted?.[k] ?? countBlanks(values, k * room, rows));
  const apart = blanks.reduce((sum, count) => sum + (count > 0 ? rows - count : 0), 0);
  const ts = scratch.float64("times", apart);
  const kept = scratch.float64("kept", apart);
  let at = 0;
  return columns.map((column, k) => {
    const own = values.subarray(k * room, k * room + rows);
    const point = { column, among: utc, decimals: decimals[k] as number };
    if (blanks[k] === 0) return { ...point, ts: utc, values: own };
    const from = at;
    at += rows - (blanks[k] as number);
    const filled = { ts: ts.subarray(from, at), values: kept.subarray(from, at) };
    takeFilled(own, utc, filled.values, filled.ts);
    return { ...point, ...filled };
  });
}

function takeFilled(own: Float64Array, utc: Float64Array, kept: Float64Array, times: Float64Array): void {
  let at = 0;
  for (let row = 0; row < own.length; row++) {
    const value = own[row] as number;
    if (Number.isNaN(value)) continue;
    times[at] = utc[row] as number;
    kept[at++] = value;
  }
}

/** Lines of the first hundred empty cells. */
function firstBlanks(own: Float64Array, firstLine: number): number[] {
  const lines: number[] = [];
  for (let row = 0; row < own.length && lines.length < 100; row++)
    if (Number.isNaN(own[row] as number)) lines.push(firstLine + row);
  return lines;
}

function countBlanks(values: Float64Array, from: number, count: number): number {
  let blanks = 0;
  for (let i = from; i < from + count; i++) if (Number.isNaN(values[i] as number)) blanks++;
  return blanks;
}

function longPoints(input: RegularInput): Found | null {
  const { bytes, delimiter, firstLine, isLast, continuation, tally, scratch } = input;
  const { layout, width } = continuation.table;
  const long = layout.long;
  if (!long || (long.unitColumn !== null && long.unitColumn < long.nameColumn)) return null;
  const columns: LongColumns = {
    stamp: dateColumnOf(long.source),
    name: long.nameColumn,
    value: long.valueColumn,
    unit: long.unitColumn,
    status: long.statusColumn,
    width,
  };
  const tableOf = (stamps: RegularStamps): LongTable => {
    const [mark, decimal] = [delimiter.charCodeAt(0), decimalCode(tally)];
    return { bytes, columns, mark, decimal, stamps, firstLine };
  };
  const stamps = stampsOf(input);
  if (!stamps) return null;
  if (!tally.isScattered) {
    const scan = scanSwept(tableOf(stamps), tally.points.length, isLast, scratch);
    if (scan?.taken === 0) return null;
    if (scan)
      return { rows: scan.taken, end: scan.end, isPlain: scan.isPlain, points: sweptPoints(scan, scratch), stamps };
    tally.isScattered = true;
  }
  // Anew: those stamps have seen dates of the rows that were tried.
  const anew = stampsOf(input) as RegularStamps;
  const scan = scanLong(tableOf(anew), scratch);
  if (scan.taken === 0) return null;
  const isPlain = scan.end === bytes.length;
  return { rows: scan.taken, end: scan.end, isPlain, points: byPoint(scan, scratch), stamps: anew };
}

const NONE = (): readonly number[] => [];

/** Points of a long table that come together. Where one has no row there is none that could have held its reading. */
function sweptPoints(scan: SweptScan, scratch: Scratch): RegularPoint[] {
  const { names, units, utc, values, decimals, blanks, sweeps } = scan;
  const columns = names.map((name, k) => ({ name, unitText: units?.[k] ?? null }));
  return columnsOf({ utc, values, decimals, blanks, room: sweeps }, columns, scratch)
    .filter(({ ts }) => ts.length > 0)
    .map((point) => ({ ...point, ascends: true, instants: point.ts, blanks: 0, missing: NONE }));
}

/** Rows of a long table by point, each point's in the order of the file. */
function byPoint({ taken: rows, names, units, point, utc, values }: LongScan, scratch: Scratch): RegularPoint[] {
  const ends = new Int32Array(names.length + 1);
  for (let row = 0; row < rows; row++)
    ends[(point[row] as number) + 1] = (ends[(point[row] as number) + 1] as number) + 1;
  for (let k = 0; k < names.length; k++) ends[k + 1] = (ends[k + 1] as number) + (ends[k] as number);
  const places = ends.slice(0, names.length);
  const ts = scratch.float64("times", rows);
  const kept = scratch.float64("kept", rows);
  for (let row = 0; row < rows; row++) {
    const own = point[row] as number;
    const at = places[own] as number;
    places[own] = at + 1;
    ts[at] = utc[row] as number;
    kept[at] = values[row] as number;
  }
  return names.map((name, k) => {
    const own = ts.subarray(ends[k], ends[k + 1]);
    const column = { name, unitText: units?.[k] ?? null };
    return {
      column,
      ts: own,
      ascends: false,
      decimals: null,
      values: kept.subarray(ends[k], ends[k + 1]),
      instants: own,
      among: own,
      blanks: 0,
      missing: NONE,
    };
  });
}
