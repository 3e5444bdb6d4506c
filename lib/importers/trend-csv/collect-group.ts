import {
  type CellReader,
  EVENT,
  FAILURE,
  MISSING,
  NUMBER,
  type ReadCells,
  STATUS_BAD,
  STATUS_FLAGGED,
} from "./cell-reader";
import type { FileContext } from "./file-context";
import type { ValueColumn } from "./layout";
import type { LineList } from "./line-list";
import { newDraft } from "./new-draft";
import type { PointDraft, PointNotice } from "./point-draft";
import { AMBIGUOUS, NONEXISTENT, REPEATED, RESOLVED } from "./resolve-local";
import { CELL_LEFT_OUT, CELL_MISSING, HOUR_RESOLVED, IGNORED, type RowFates } from "./row-fates";
import type { Rows } from "./rows";
import { statusMeaning } from "./status-words";
import type { TrendAnswers, TrendFindingCode } from "./trend-file";
import { readUnit } from "./units";
import { implausibleTest, sentinelTest } from "./value-limits";

export type GroupInput = {
  rows: Rows;
  /** Rows of the group, in file order, with their instants. */
  rowIndex: Int32Array;
  utc: Float64Array;
  state: Uint8Array;
  columns: readonly ValueColumn[];
  section: number;
  reader: CellReader;
  fates: RowFates;
  answers: TrendAnswers;
  evidence: FileContext["evidence"];
  goodFlags: ReadonlySet<string> | null;
  eventLines: LineList;
  unreadableLines: LineList;
};

/** Reads all value columns that share one set of instants. */
export function collectGroup(input: GroupInput): PointDraft[] {
  const read = input.columns.map((column) => input.reader.read(input.rows, input.rowIndex, column.column));
  const isEvent = eventRows(read, input);
  const n = input.rowIndex.length;
  const presence = new Float64Array(n);
  let present = 0;
  for (let i = 0; i < n; i++) {
    const state = input.state[i];
    if (state === REPEATED && isEvent?.[i] !== 1)
      input.fates.mark(input.rowIndex[i] as number, HOUR_RESOLVED, "repeated-hour-resolved");
    if ((state === RESOLVED || state === REPEATED) && isEvent?.[i] !== 1) presence[present++] = input.utc[i] as number;
  }
  const shared = presence.slice(0, present);
  return input.columns.map((column, k) => collectColumn(column, read[k] as ReadCells, isEvent, shared, input));
}

/** Rows where the log speaks of itself and no column has a reading; null when there are none. */
function eventRows(read: readonly ReadCells[], { rowIndex, rows, fates, eventLines }: GroupInput): Uint8Array | null {
  if (read.every((cells) => cells.events === 0)) return null;
  let found: Uint8Array | null = null;
  for (let i = 0; i < rowIndex.length; i++) {
    if (!read.some((cells) => cells.code[i] === EVENT)) continue;
    if (read.some((cells) => cells.code[i] !== EVENT && cells.code[i] !== MISSING)) continue;
    found ??= new Uint8Array(rowIndex.length);
    found[i] = 1;
    const row = rowIndex[i] as number;
    eventLines.add(rows.lines[row] as number);
    fates.mark(row, IGNORED, "event-row");
  }
  return found;
}

function collectColumn(
  column: ValueColumn,
  cells: ReadCells,
  isEvent: Uint8Array | null,
  presence: Float64Array,
  input: GroupInput,
): PointDraft {
  const { rowIndex, utc, rows, reader, fates } = input;
  const draft = newDraft(column, input.evidence(input.section, column.name, cells), input);
  const isState = draft.kind === "state";
  const isSentinel = isState ? () => false : sentinelTest(draft.unit, cells.value, cells.code);
  const isImplausible = isState ? () => false : implausibleTest(draft.name, draft.unit);
  const ts = new Float64Array(rowIndex.length);
  const values = new Float64Array(rowIndex.length);
  const kept = new Int32Array(rowIndex.length);
  let count = 0;
  const leaveOut = (row: number, code: TrendFindingCode, list: LineList): void => {
    list.add(rows.lines[row] as number);
    fates.mark(row, code === "value-missing" ? CELL_MISSING : CELL_LEFT_OUT, code);
  };
  for (let i = 0; i < rowIndex.length; i++) {
    const state = input.state[i];
    if ((state !== RESOLVED && state !== REPEATED) || isEvent?.[i] === 1) continue;
    const row = rowIndex[i] as number;
    const code = cells.code[i] as number;
    if (draft.sparse && code === MISSING) continue;
    const status = Math.max(cells.status?.[i] ?? 0, statusOfRow(column, row, input));
    if (code === MISSING || (code === FAILURE && !isState)) {
      // A bad status beside an empty cell tells why it is empty.
      const notice: PointNotice = status === STATUS_BAD ? "status-bad" : "value-missing";
      leaveOut(row, notice, draft.lists[notice]);
      continue;
    }
    if (status === STATUS_BAD) {
      leaveOut(row, "status-bad", draft.lists["status-bad"]);
      continue;
    }
    let value = cells.value[i] as number;
    if (isState) {
      if (code === NUMBER) value = reader.wordId(String(value));
    } else if (code !== NUMBER || !unitAgrees(draft, cells, i)) {
      leaveOut(row, "row-unreadable", input.unreadableLines);
      continue;
    } else if (isSentinel(value)) {
      leaveOut(row, "sentinel-value", draft.lists["sentinel-value"]);
      if (draft.oddValues["sentinel-value"].size < 6) draft.oddValues["sentinel-value"].add(value);
      continue;
    } else if (isImplausible(value)) {
      leaveOut(row, "implausible-value", draft.lists["implausible-value"]);
      if (draft.oddValues["implausible-value"].size < 6) draft.oddValues["implausible-value"].add(value);
      continue;
    }
    if (status === STATUS_FLAGGED) draft.lists["status-flagged"].add(rows.lines[row] as number);
    ts[count] = utc[i] as number;
    values[count] = value;
    kept[count] = row;
    count++;
  }
  draft.chunks.push({ ts: ts.slice(0, count), values: values.slice(0, count), rows: kept.slice(0, count) });
  draft.presence.push(draft.sparse ? ts.slice(0, count) : presence);
  return draft;
}

function statusOfRow(column: ValueColumn, row: number, { rows, goodFlags }: GroupInput): number {
  if (column.statusColumn === null) return 0;
  const text = rows.cell(row, column.statusColumn).trim();
  if (goodFlags) return goodFlags.has(text) ? 0 : STATUS_BAD;
  const meaning = statusMeaning(text) ?? "flagged";
  return meaning === "good" ? 0 : meaning === "bad" ? STATUS_BAD : STATUS_FLAGGED;
}

/** A number that carries another unit than its point is not converted on the quiet. */
function unitAgrees(draft: PointDraft, cells: ReadCells, i: number): boolean {
  if (cells.units.size === 0) return true;
  const text = cells.unitAt.get(i);
  return text === undefined || text === draft.unitAsWritten || readUnit(text)?.unit === draft.unit;
}

export const isHeldBack = (state: number | undefined): boolean => state === AMBIGUOUS || state === NONEXISTENT;
