import { dayNumber } from "./civil-date";

const DAY = 86400;
/** What is looked at [UTC seconds]. Before and behind it the offset at its ends is taken for the offset. */
const FROM = dayNumber(1990, 1, 1) * DAY;
const TO = dayNumber(2050, 1, 1) * DAY;
/** Clocks never went forth and back again within this [s]: the shortest times were the 12 days of Tucumán in 2004. */
const STRIDE = 7 * DAY;
/** Clocks change at a quarter of an hour in UTC; where not, the second is searched for [s]. */
const QUARTER = 900;
/** How much more is looked at in one go [s]: about a year. */
const REACH = 53 * STRIDE;
/** What is known of the days about an instant that is asked for [s]. */
const MARGIN = 2 * STRIDE;

/** A stretch of UTC seconds of one offset, `from` up to, not with, `to`, and the offsets before and after it. */
export type OffsetStretch = { from: number; to: number; offset: number; before: number; after: number };

/**
 * Offsets of a zone east of UTC [s], by its transitions. Each costs some dozen questions to the clock of the zone, so
 * that only the years that are asked for are looked at, and those between them.
 */
export class ZoneTransitions {
  /** The stretch that is known. */
  private from = TO;
  private to = TO;
  /** Where each offset begins; the first one where what is known does. */
  private starts: number[] = [Number.NEGATIVE_INFINITY];
  private offsets: number[] = [];
  /** The stretch that was asked for last, as far as it is known: millions of instants in a row lie in one. */
  private lastFrom = Number.POSITIVE_INFINITY;
  private lastTo = Number.POSITIVE_INFINITY;
  private lastOffset = Number.NaN;

  constructor(private readonly readOffset: (utcSeconds: number) => number) {}

  /** NaN for an instant that is none. */
  offsetAt(utc: number): number {
    if (utc >= this.lastFrom && utc < this.lastTo) return this.lastOffset;
    const { from, to, offset } = this.stretchAt(utc);
    if (utc >= from && utc < to) {
      this.lastFrom = from;
      this.lastTo = to;
      this.lastOffset = offset;
    }
    return offset;
  }

  /**
   * The stretch about an instant; cut short where nothing more is known yet, some days from the instant at least. What it
   * says of an offset before or after it holds for its own ends.
   */
  stretchAt(utc: number): OffsetStretch {
    const index = this.indexAt(utc);
    const { starts, offsets } = this;
    const offset = offsets[index] ?? Number.NaN;
    const earliest = this.from > FROM ? this.from + DAY : Number.NEGATIVE_INFINITY;
    const latest = this.to < TO ? this.to - DAY : Number.POSITIVE_INFINITY;
    return {
      from: Math.max(starts[index] as number, earliest),
      to: Math.min(starts[index + 1] ?? Number.POSITIVE_INFINITY, latest),
      offset,
      before: offsets[index - 1] ?? offset,
      after: offsets[index + 1] ?? offset,
    };
  }

  private indexAt(utc: number): number {
    if (utc - MARGIN < this.from || utc + MARGIN > this.to) this.lookAt(utc);
    const { starts } = this;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= utc) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Makes known what lies about an instant, and all between it and what is known. */
  private lookAt(utc: number): void {
    const strides = (seconds: number): number =>
      Math.min(Math.max(FROM + Math.ceil((seconds - FROM) / STRIDE) * STRIDE, FROM), TO);
    if (this.offsets.length === 0) {
      this.from = strides(utc - MARGIN - STRIDE);
      this.to = this.from;
      this.offsets = [this.readOffset(this.from)];
    }
    const from = strides(utc - MARGIN - STRIDE);
    if (from < this.from) {
      const earlier = strides(Math.min(from, this.from - REACH));
      const found = this.search(earlier, this.from);
      this.starts = [Number.NEGATIVE_INFINITY, ...found.starts, ...this.starts.slice(1)];
      this.offsets = [...found.offsets, ...this.offsets.slice(1)];
      this.from = earlier;
    }
    const to = strides(utc + MARGIN);
    if (to > this.to) {
      const later = strides(Math.max(to, this.to + REACH));
      const found = this.search(this.to, later);
      this.starts.push(...found.starts);
      this.offsets.push(...found.offsets.slice(1));
      this.to = later;
    }
  }

  /** The transitions between two instants: where each is, and the offset at the first instant and after each. */
  private search(first: number, end: number): { starts: number[]; offsets: number[] } {
    const { readOffset } = this;
    const starts: number[] = [];
    const offsets = [readOffset(first)];
    for (let from = first; from < end; from += STRIDE) {
      const to = Math.min(from + STRIDE, end);
      const before = offsets[offsets.length - 1] as number;
      const after = readOffset(to);
      if (after === before) continue;
      const quarter = firstOther(readOffset, before, { low: from, high: to, unit: QUARTER });
      const isExact = readOffset(quarter - 1) === before;
      starts.push(
        isExact ? quarter : firstOther(readOffset, before, { low: quarter - QUARTER, high: quarter, unit: 1 }),
      );
      offsets.push(after);
    }
    return { starts, offsets };
  }
}

/** First instant after `low`, in whole units, at which the offset is no longer `before`; at `high` it is not. */
function firstOther(
  readOffset: (utcSeconds: number) => number,
  before: number,
  { low, high, unit }: { low: number; high: number; unit: number },
): number {
  let [from, to] = [0, (high - low) / unit];
  while (to - from > 1) {
    const middle = Math.floor((from + to) / 2);
    if (readOffset(low + middle * unit) === before) from = middle;
    else to = middle;
  }
  return low + to * unit;
}
