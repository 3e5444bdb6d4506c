import type { TrendSlice } from "@/lib/trends/trend-store";
import { assertSeriesId, FIRST_SECOND, LAST_SECOND } from "./bucket";
import type { Samples } from "./chunk-format";
import { rescale } from "./rescale";

const MOST_DECIMALS = 9;

/** Samples that there is room for at first: a day of a thousand points needs no more. */
const FIRST_ROOM = 100_000;

/**
 * A stretch of the block: samples of one series as they came in one slice. Times are kept as distances from the first of
 * their stretch, in 32 bits: 68 years.
 */
type Stretch = { first: number; start: number; end: number; decimals: number };

/**
 * Collects checked slices by series until they are worth a flush. Copies them into one block of eight bytes a sample,
 * which is used again after each flush: a caller may use its arrays again, and memory does not grow with what is written.
 */
export class SliceBuffer {
  sampleCount = 0;
  private distances: Int32Array;
  private values: Int32Array;
  private readonly bySeries = new Map<number, Stretch[]>();
  private rows = { ts: new Float64Array(0), v: new Int32Array(0) };

  constructor(private readonly capacity: number) {
    const room = Math.min(capacity, FIRST_ROOM);
    this.distances = new Int32Array(room);
    this.values = new Int32Array(room);
  }

  get full(): boolean {
    return this.sampleCount === this.capacity;
  }

  /** Takes samples of a slice from index `from` on, as many as it can at once; returns the index after them. */
  add(slice: TrendSlice, from = 0): number {
    if (from === 0) assertSlice(slice);
    const { series, ts, v, decimals } = slice;
    const start = this.sampleCount;
    const until = Math.min(ts.length, from + this.capacity - start);
    if (from >= until) return from;
    const first = ts[from] as number;
    assertTime(series, first);
    if (start + until - from > this.values.length) this.enlarge();
    const { distances } = this;
    let next = from;
    for (let at = start; next < until; next++, at++) {
      const time = ts[next] as number;
      // A whole number of seconds from a whole one is whole.
      const distance = (time - first) | 0;
      if (first + distance !== time || time < FIRST_SECOND || time > LAST_SECOND) {
        assertTime(series, time);
        break;
      }
      distances[at] = distance;
    }
    this.values.set(v.subarray(from, next), start);
    this.sampleCount = start + next - from;
    const stretch = { first, start, end: this.sampleCount, decimals };
    const stretches = this.bySeries.get(series);
    if (stretches === undefined) this.bySeries.set(series, [stretch]);
    else stretches.push(stretch);
    return next;
  }

  private enlarge(): void {
    const enlarged = (array: Int32Array): Int32Array => {
      const larger = new Int32Array(this.capacity);
      larger.set(array);
      return larger;
    };
    this.distances = enlarged(this.distances);
    this.values = enlarged(this.values);
  }

  /** Hands out what was collected, series ascending, and is empty afterwards. Rows stand until the next are taken. */
  *take(): Generator<{ series: number; rows: Samples }> {
    const series = [...this.bySeries.keys()].sort((a, b) => a - b);
    for (const id of series) yield { series: id, rows: this.rowsOf(id, this.bySeries.get(id) ?? []) };
    this.bySeries.clear();
    this.sampleCount = 0;
  }

  private rowsOf(series: number, stretches: readonly Stretch[]): Samples {
    const decimals = stretches.reduce((most, stretch) => Math.max(most, stretch.decimals), 0);
    const count = stretches.reduce((sum, { start, end }) => sum + end - start, 0);
    if (this.rows.ts.length < count) this.rows = { ts: new Float64Array(count), v: new Int32Array(count) };
    const ts = this.rows.ts.subarray(0, count);
    const v = this.rows.v.subarray(0, count);
    let at = 0;
    for (const { first, start, end, decimals: kept } of stretches) {
      const { distances } = this;
      for (let i = start; i < end; i++) ts[at + i - start] = first + (distances[i] as number);
      const values = { ts, v: this.values.subarray(start, end), decimals: kept };
      v.set(kept === decimals ? values.v : rescaleNamed(series, values, decimals).v, at);
      at += end - start;
    }
    return { ts, v, decimals };
  }
}

/** `rescale`, with the series in what it says of a value that does not fit. */
export function rescaleNamed(series: number, samples: Samples, decimals: number): Samples {
  try {
    return rescale(samples, decimals);
  } catch (error) {
    throw error instanceof RangeError ? new RangeError(`series ${series}: ${error.message}`) : error;
  }
}

function assertSlice({ series, ts, v, decimals }: TrendSlice): void {
  assertSeriesId(series);
  if (ts.length !== v.length) {
    throw new RangeError(`series ${series}: ${ts.length} times, but ${v.length} values`);
  }
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > MOST_DECIMALS) {
    throw new RangeError(
      `series ${series}: ${decimals} decimals; it must be a whole number from 0 to ${MOST_DECIMALS}`,
    );
  }
}

function assertTime(series: number, time: number): void {
  // False for NaN as well.
  if (time >= FIRST_SECOND && time <= LAST_SECOND && Math.floor(time) === time) return;
  throw new RangeError(
    `series ${series}: ${time} is not a time that can be kept; it must be a whole UTC second from ${FIRST_SECOND} (1999) to ${LAST_SECOND} (2313)`,
  );
}
