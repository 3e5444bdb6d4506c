import { collectGroup, type GroupInput, isHeldBack } from "./collect-group";
import type { FileContext } from "./file-context";
import type { Layout, ValueColumn } from "./layout";
import type { PointDraft } from "./point-draft";
import { type Clock, isUnread } from "./read-table";
import { AMBIGUOUS, REPEATED, resolveLocal } from "./resolve-local";
import { HELD_BACK, UNREAD } from "./row-fates";
import type { Rows } from "./rows";
import type { Section } from "./sections";
import { READ, type TimeSource } from "./stamp-column";

/** Reads the points of a table that has a column for each. */
export function readColumns(index: number, section: Section, layout: Layout, context: FileContext): PointDraft[] {
  return layout.groups.flatMap(({ source, values }) => {
    const clock = clockOf(source, context);
    const rowIndex = rowsWithStamp(
      section,
      clock,
      layout.form === "pairs" ? values.map((value) => value.column) : null,
      context,
    );
    const drafts = collect(rowIndex, clock, values, index, layout, context);
    if (layout.statistics) {
      const seconds = intervalSeconds(rowIndex, clock, layout, context);
      for (const draft of drafts) draft.intervalSeconds = seconds;
    }
    return drafts;
  });
}

export const clockOf = (source: TimeSource, { skeleton }: FileContext): Clock =>
  (skeleton.clocks.find((clock) => clock.source === source) ?? skeleton.clocks[0]) as Clock;

/** Rows of a section with a readable stamp; of a pair of columns only those with a value beside it. */
export function rowsWithStamp(
  section: Section,
  clock: Clock,
  columns: readonly number[] | null,
  { rows, fates, lists }: FileContext,
): Int32Array {
  const list: number[] = [];
  for (let row = section.dataFrom; row < section.dataTo; row++) {
    const status = clock.stamps.status[row];
    if (columns && isUnread(status)) {
      lists.unreadable.add(rows.lines[row] as number);
      fates.mark(row, UNREAD, "row-unreadable");
    }
    if (status !== READ) continue;
    list.push(row);
  }
  return Int32Array.from(list);
}

/** Places the rows of one point, or of all points of a wide table, in time and reads their values. */
export function collect(
  rowIndex: Int32Array,
  clock: Clock,
  columns: readonly ValueColumn[],
  section: number,
  layout: Layout,
  context: FileContext,
): PointDraft[] {
  const { rows, skeleton, fates, lists, answers } = context;
  const local = new Float64Array(rowIndex.length);
  const offset = new Float64Array(rowIndex.length);
  const columnOffset = layout.offsetColumn === null ? null : offsetReader(layout.offsetColumn, rowIndex, rows);
  for (let i = 0; i < rowIndex.length; i++) {
    const row = rowIndex[i] as number;
    local[i] = clock.local[row] as number;
    const own = clock.stamps.offset[row] as number;
    offset[i] = !Number.isNaN(own) ? own : layout.saysUtc ? 0 : columnOffset ? columnOffset(row) : Number.NaN;
  }
  const { utc, state } = resolveLocal({ local, offset }, skeleton.zone, answers.clock, clock.newestFirst);
  for (let i = 0; i < rowIndex.length; i++) {
    const row = rowIndex[i] as number;
    if (isHeldBack(state[i])) {
      const code = state[i] === AMBIGUOUS ? "ambiguous-local-time" : "nonexistent-local-time";
      fates.mark(row, HELD_BACK, code);
      lists[state[i] === AMBIGUOUS ? "ambiguous" : "nonexistent"].add(rows.lines[row] as number);
    } else if (state[i] === REPEATED) {
      lists.repeated.add(rows.lines[row] as number);
    }
  }
  const input: GroupInput = {
    rows,
    rowIndex,
    utc,
    state,
    columns,
    section,
    reader: context.reader,
    fates,
    answers,
    evidence: context.evidence,
    goodFlags: layout.numericFlag && answers.flagColumn ? new Set(answers.flagColumn.good) : null,
    eventLines: lists.event,
    unreadableLines: lists.unreadable,
  };
  return collectGroup(input);
}

/** Offsets from a column of their own, in minutes or hours (`660`, `11`, `+11:00`), east of UTC positive. */
function offsetReader(column: number, rowIndex: Int32Array, rows: Rows): (row: number) => number {
  let largest = 0;
  for (const row of rowIndex) largest = Math.max(largest, Math.abs(Number(rows.cell(row, column))) || 0);
  const scale = largest > 900 ? 1 : largest > 15 ? 60 : 3600;
  return (row) => {
    const text = rows.cell(row, column).trim();
    const clock = /^([+-]?)(\d{1,2}):(\d{2})$/.exec(text);
    if (clock) return (clock[1] === "-" ? -1 : 1) * (Number(clock[2]) * 3600 + Number(clock[3]) * 60);
    return text === "" ? Number.NaN : Number(text) * scale;
  };
}

function intervalSeconds(rowIndex: Int32Array, clock: Clock, layout: Layout, { skeleton }: FileContext): number | null {
  const first = rowIndex[0];
  if (first === undefined) return null;
  if (layout.endSource) {
    const end = skeleton.clocks.find((other) => other.source === layout.endSource);
    const seconds = end ? (end.local[first] as number) - (clock.local[first] as number) : Number.NaN;
    if (seconds > 0) return seconds;
  }
  const second = rowIndex[1];
  return second === undefined ? null : Math.abs((clock.local[second] as number) - (clock.local[first] as number));
}
