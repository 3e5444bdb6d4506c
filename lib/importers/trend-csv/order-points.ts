import type { FileContext } from "./file-context";
import { sortedInstants } from "./gaps";
import { orderReadings } from "./order-and-duplicates";
import { joinInstants, joinReadings, type PointDraft } from "./point-draft";
import { KEPT, REPLACED, SAME_AS_EARLIER } from "./row-fates";
import type { WrittenValues } from "./trend-file";

/** A point of some rows with its readings by time, each instant once. */
export type OrderedPoint = {
  draft: PointDraft;
  ts: Float64Array;
  /** In the unit as written, or numbers into `stateNames`. */
  values: Float64Array;
  stateNames: string[] | null;
  /** Instants of all its rows, also those without a reading; points of one table share them. */
  instants: Float64Array;
  /** Instants that its own are among; points that come together share them. */
  among?: Float64Array;
  reordered: boolean;
  written?: WrittenValues | null;
};

/** Puts the readings of each point in order, and notes what became of their rows. */
export function orderPoints(drafts: readonly PointDraft[], context: FileContext): OrderedPoint[] {
  const { rows, fates, reader, lists } = context;
  const identical = new Set<number>();
  const conflicting = new Map<number, number>();
  const instants = instantsByPoint(drafts);
  const points = drafts.map((draft, k): OrderedPoint => {
    const ordered = orderReadings(joinReadings(draft.chunks));
    for (const row of ordered.identical) identical.add(row);
    for (const { replaced, keptRow } of ordered.conflicting) conflicting.set(replaced, keptRow);
    for (const row of ordered.rows) fates.mark(row, KEPT);
    const states = draft.kind === "state" ? compressStates(ordered.values, reader.words) : null;
    return {
      draft,
      ts: ordered.ts,
      values: states ? states.values : ordered.values,
      stateNames: states ? states.names : null,
      instants: instants[k] as Float64Array,
      among: instants[k] as Float64Array,
      reordered: ordered.reordered,
    };
  });
  for (const row of [...identical].sort((a, b) => a - b)) {
    if (conflicting.has(row)) continue;
    fates.mark(row, SAME_AS_EARLIER, "duplicate-identical");
    lists.identical.add(rows.lines[row] as number);
  }
  for (const [replaced, keptRow] of [...conflicting].sort((a, b) => a[0] - b[0])) {
    fates.mark(replaced, REPLACED, "duplicate-conflicting");
    lists.conflicting.add(rows.lines[replaced] as number, rows.lines[keptRow] as number);
  }
  return points;
}

/** Instants of each point's rows, sorted once where points share them. */
function instantsByPoint(drafts: readonly PointDraft[]): Float64Array[] {
  const known = new Map<Float64Array, Float64Array>();
  return drafts.map((draft) => {
    const only = draft.presence.length === 1 ? (draft.presence[0] as Float64Array) : joinInstants(draft.presence);
    let instants = known.get(only);
    if (!instants) {
      instants = sortedInstants(only);
      known.set(only, instants);
    }
    return instants;
  });
}

/** State numbers of one point, counted from 0 in the order of the names. */
function compressStates(values: Float64Array, words: readonly string[]): { values: Float64Array; names: string[] } {
  const used = [...new Set(values)].map((id) => ({ id, name: words[id] as string }));
  used.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  const place = new Map(used.map(({ id }, i) => [id, i]));
  return { values: values.map((id) => place.get(id) as number), names: used.map(({ name }) => name) };
}
