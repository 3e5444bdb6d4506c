/** Samples of one series: UTC seconds ascending and values as integers scaled by 10^decimals, of equal length. */
export type TrendSlice = { series: number; ts: Float64Array; v: Int32Array; decimals: number };

/** One sample as a plain number. */
export type Reading = { series: number; ts: number; value: number };

/**
 * What a write did with its samples: laid down at new times, changed, or found as they stood. Samples at a time that
 * the same write had given before count in `repeated` instead, by whether they gave the value that stood then.
 */
export type WriteStats = {
  added: number;
  changed: number;
  same: number;
  repeated: { same: number; changed: number };
  chunksWritten: number;
};

/**
 * Whether a run can be undone. `nothing`: it changed nothing, or was undone before. `blocked`: a later run, `by`, wrote
 * to the same trends. `given-up`: several runs came after it, or its samples were removed in part.
 */
export type UndoState = { status: "nothing" | "undoable" | "given-up" } | { status: "blocked"; by: number };

/**
 * The trend store: packed samples by series id (= `point.id`). Callers see typed arrays, never SQL. All times are
 * UTC seconds. `run` is the import run that a write belongs to; `undo` puts back what stood before it.
 */
export interface TrendStore {
  write(slices: AsyncIterable<TrendSlice> | Iterable<TrendSlice>, run: number): Promise<WriteStats>;
  /** Samples with `from <= ts < to`, one slice a series (empty arrays where there are none), in the order asked. */
  read(series: readonly number[], from: number, to: number): AsyncIterable<TrendSlice>;
  asOf(queries: readonly { series: number; ts: number; maxAgeSeconds?: number }[]): Promise<(Reading | null)[]>;
  latest(series: readonly number[]): Promise<(Reading | null)[]>;
  /** Revision per series, raised at every change; 0 for a series that holds nothing. */
  rev(series: readonly number[]): Promise<number[]>;
  /** First and last second and the number of samples per series, or null. */
  extent(series: readonly number[]): Promise<({ firstTs: number; lastTs: number; count: number } | null)[]>;
  remove(series: number, from?: number, to?: number): Promise<void>;
  undo(run: number): Promise<void>;
  undoState(run: number): Promise<UndoState>;
}
