import type { TrendSlice } from "@/lib/trends/trend-store";
import { assertSeriesId, FIRST_SECOND, LAST_SECOND } from "./bucket";
import type { Samples } from "./chunk-format";
import { rescale } from "./rescale";

const MOST_DECIMALS = 9;

/** Samples that there is room for at first: a day of a thousand points needs no more. */
const FIRST_ROOM = 100_000;

/** A stretch of the block: samples of one series as they came in one slice, and whether their times ascend. */
type Stretch = { start: number; end: number; decimals: number; ascends: boolean };

/** Rows of a series as they came, good until the next are taken, and whether their times are known to ascend. */
export type CollectedRows = Samples & { ascends: boolean };

/**
 * Collects checked slices by series until they are worth a flush. Copies them into one block of twelve bytes a sample,
 * which is used again after each flush: a caller may use its arrays again, and memory does not grow with what is written.
 */
export class SliceBuffer {
  sampleCount = 0;
  private times: Float64Array;
  private values: Int32Array;
  private readonly bySeries = new Map<number, Stretch[]>();
  private joined = { ts: new Float64Array(0), v: new Int32Array(0) };

  constructor(private readonly capacity: number) {
    const room = Math.min(capacity, FIRST_ROOM);
    this.times = new Float64Array(room);
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
    const next = Math.min(ts.length, from + this.capacity - start);
    if (from >= next) return from;
    const taken = ts.subarray(from, next);
    const ascends = assertTimes(series, taken);
    const end = start + taken.length;
    if (end > this.values.length) this.enlarge();
    this.times.set(taken, start);
    this.values.set(v.subarray(from, next), start);
    this.sampleCount = end;
    const stretch = { start, end, decimals, ascends };
    const stretches = this.bySeries.get(series);
    if (stretches === undefined) this.bySeries.set(series, [stretch]);
    else stretches.push(stretch);
    return next;
  }

  private enlarge(): void {
    const [times, values] = [new Float64Array(this.capacity), new Int32Array(this.capacity)];
    times.set(this.times);
    values.set(this.values);
    this.times = times;
    this.values = values;
  }

  /** Hands out what was collected, series ascending, and is empty afterwards. */
  *take(): Generator<{ series: number; rows: CollectedRows }> {
    const series = [...this.bySeries.keys()].sort((a, b) => a - b);
    for (const id of series) yield { series: id, rows: this.rowsOf(id, this.bySeries.get(id) ?? []) };
    this.bySeries.clear();
    this.sampleCount = 0;
  }

  private rowsOf(series: number, stretches: readonly Stretch[]): CollectedRows {
    const [only] = stretches;
    if (only && stretches.length === 1) return { ...this.samplesOf(only), ascends: only.ascends };
    const decimals = stretches.reduce((most, stretch) => Math.max(most, stretch.decimals), 0);
    const count = stretches.reduce((sum, { start, end }) => sum + end - start, 0);
    if (this.joined.ts.length < count) this.joined = { ts: new Float64Array(count), v: new Int32Array(count) };
    const ts = this.joined.ts.subarray(0, count);
    const v = this.joined.v.subarray(0, count);
    let ascends = true;
    let at = 0;
    for (const stretch of stretches) {
      const samples = this.samplesOf(stretch);
      ts.set(samples.ts, at);
      v.set(samples.decimals === decimals ? samples.v : rescaleNamed(series, samples, decimals).v, at);
      ascends &&= stretch.ascends && (at === 0 || (ts[at] as number) > (ts[at - 1] as number));
      at += samples.ts.length;
    }
    return { ts, v, decimals, ascends };
  }

  private samplesOf({ start, end, decimals }: Stretch): Samples {
    return { ts: this.times.subarray(start, end), v: this.values.subarray(start, end), decimals };
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

/** Refuses times that cannot be kept; says whether each is later than the one before it. */
function assertTimes(series: number, times: Float64Array): boolean {
  const first = times[0] as number;
  if (!isTime(first)) throw wrongTime(series, first);
  let ascends = true;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < times.length; i++) {
    const time = times[i] as number;
    // A whole number of seconds from a whole one is whole; what lies further than 68 years is looked at by itself.
    const distance = (time - first) | 0;
    if ((first + distance !== time || time < FIRST_SECOND || time > LAST_SECOND) && !isTime(time))
      throw wrongTime(series, time);
    if (time <= before) ascends = false;
    before = time;
  }
  return ascends;
}

/** False for NaN as well. */
const isTime = (time: number): boolean => time >= FIRST_SECOND && time <= LAST_SECOND && Math.floor(time) === time;

const wrongTime = (series: number, time: number): RangeError =>
  new RangeError(
    `series ${series}: ${time} is not a time that can be kept; it must be a whole UTC second from ${FIRST_SECOND} (1999) to ${LAST_SECOND} (2313)`,
  );
