import { isAscending } from "@/lib/order/time-order";
import { addEvidence, type CellEvidence } from "./cell-evidence";
import { NUMBER } from "./cell-reader";
import { factKey } from "./file-facts";
import type { FileTally } from "./file-tally";
import type { ValueColumn } from "./layout";
import { newDraft } from "./new-draft";
import type { PointTally } from "./point-tally";
import type { Continuation } from "./read-part";
import type { TrendAnswers, WrittenValues } from "./trend-file";
import { implausibleTest, leastSentinel, sentinelTest } from "./value-limits";

/** Readings of one point among plain rows. */
export type RegularPoint = {
  /** Its column of a wide table, or its name and unit text in a long one. */
  column: ValueColumn | { name: string; unitText: string | null };
  ts: Float64Array;
  /** Whether the instants are known to ascend: those of a table that is read by instant do. */
  ascends: boolean;
  values: Float64Array;
  /** Most decimals that one of the values is written with; null where nobody counted. */
  decimals: number | null;
  /** Instants of the rows that its own are among; points that come together share them. */
  among: Float64Array;
  /** Instants of all rows it could have a reading in. */
  instants: Float64Array;
  /** Empty cells, and the lines of the first hundred of them, if any can come before a line. */
  blanks: number;
  missing: (before: number) => readonly number[];
};

/** A point that fits what the file is known to hold, ready to be added. */
export type SettledPoint = RegularPoint & {
  tally: PointTally;
  evidence: CellEvidence;
  key: string;
  stateNames: string[] | null;
  /** Of the values. */
  sum: number;
  written: WrittenValues | null;
};

/** The points of plain rows as they add to the tally; null when one needs a closer look: it is new, changes, or has odd values. */
export function settleRegular(
  points: readonly RegularPoint[],
  { tally, continuation, answers }: { tally: FileTally; continuation: Continuation; answers: TrendAnswers },
): SettledPoint[] | null {
  const settled: SettledPoint[] = [];
  for (const point of points) {
    const one = settle(point, tally, continuation.table.section, answers);
    if (!one) return null;
    settled.push(one);
  }
  return settled;
}

function settle(point: RegularPoint, tally: FileTally, section: number, answers: TrendAnswers): SettledPoint | null {
  const { column, ts, values } = point;
  const key = factKey(section, column.name);
  const known = tally.pointAt(key);
  if (!known || known.draft.sparse) return null;
  const { draft } = known;
  if ("unitText" in column && column.unitText !== null && (column.unitText.trim() || null) !== draft.unitAsWritten)
    return null;
  // One by one: taken out of an array they would be made an object at every change.
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    sum += value;
    if (value < lowest) lowest = value;
    if (value > highest) highest = value;
  }
  const { zeros, ones } = lowest <= 1 && highest >= 0 ? countStates(values) : NO_STATES;
  if (!point.ascends && !isAscending(ts)) return null;
  const evidence: CellEvidence = {
    cells: values.length + point.blanks,
    blanks: point.blanks,
    numbers: values.length,
    words: 0,
    failures: 0,
    zeros,
    ones,
    units: {},
  };
  const isState = draft.kind === "state";
  if (isState && zeros + ones < values.length) return null;
  if (!isState && values.length > 0 && hasOddValues(point, draft, lowest, highest)) return null;
  if (
    !tally.facts.cells &&
    draft.unitAsWritten === null &&
    !staysAs(known, addEvidence(tally.evidenceAt(key), evidence), answers)
  )
    return null;
  const written = isState || point.decimals === null ? null : { decimals: point.decimals, lowest, highest };
  return { ...point, tally: known, evidence, key, sum, written, ...statesOf(isState, values, zeros, ones) };
}

const NO_STATES = { zeros: 0, ones: 0 };

function countStates(values: Float64Array): typeof NO_STATES {
  let zeros = 0;
  let ones = 0;
  for (let i = 0; i < values.length; i++) {
    if (values[i] === 0) zeros++;
    else if (values[i] === 1) ones++;
  }
  return { zeros, ones };
}

/** Whether a point without a unit is still taken for what it was, with more of its cells known. */
function staysAs({ draft }: PointTally, evidence: CellEvidence, answers: TrendAnswers): boolean {
  if (evidence.words > 0) return false;
  const column: ValueColumn = {
    column: draft.column ?? 0,
    heading: draft.name,
    name: draft.name,
    unitAsWritten: null,
    unit: null,
    statusColumn: null,
    nameFromFile: draft.nameFromFile,
  };
  return newDraft(column, evidence, { section: draft.section, answers }).kind === draft.kind;
}

/** Whether some values are sentinels or cannot be. */
function hasOddValues(
  { values }: RegularPoint,
  { name, unit }: PointTally["draft"],
  lowest: number,
  highest: number,
): boolean {
  const isImplausible = implausibleTest(name, unit);
  if (isImplausible(lowest) || isImplausible(highest)) return true;
  const least = leastSentinel(unit);
  if (lowest > -least && highest < least) return false;
  const isSentinel = sentinelTest(unit, values, new Uint8Array(values.length).fill(NUMBER));
  for (let i = 0; i < values.length; i++) {
    const value = values[i] as number;
    if ((value >= least || value <= -least) && isSentinel(value)) return true;
  }
  return false;
}

function statesOf(
  isState: boolean,
  values: Float64Array,
  zeros: number,
  ones: number,
): { values: Float64Array; stateNames: string[] | null } {
  if (!isState) return { values, stateNames: null };
  const names = [...(zeros > 0 ? ["0"] : []), ...(ones > 0 ? ["1"] : [])];
  // Numbers into the names: with both of them there they are the values themselves.
  return { values: names.length === 2 ? values : new Float64Array(values.length), stateNames: names };
}
