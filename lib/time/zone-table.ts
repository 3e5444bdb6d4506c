import { dayNumber } from "./civil-date";

/**
 * Offsets of an IANA zone as a table of transitions, for millions of conversions. Instants are UTC seconds;
 * "local seconds" count the wall clock as if it were UTC.
 */
export type ZoneTable = {
  timeZone: string;
  /** Offset east of UTC in seconds at an instant. */
  offsetAt(utcSeconds: number): number;
  localFromUtc(utcSeconds: number): number;
  utcFromLocal(localSeconds: number): LocalInstant;
  /**
   * The stretch of local seconds about a reading (`from` up to, not with, `to`) in which every reading is one instant of
   * one offset; null in an hour that is repeated or skipped.
   */
  uniqueSpanAt(localSeconds: number): { from: number; to: number; offset: number } | null;
};

/** What a wall-clock reading means: one instant, two (clocks went back) or none (clocks went forward). */
export type LocalInstant =
  | { status: "unique"; utcSeconds: number }
  | { status: "repeated"; firstUtcSeconds: number; secondUtcSeconds: number }
  | { status: "missing"; shiftedUtcSeconds: number };

const FROM = dayNumber(1990, 1, 1) * 86400;
const TO = dayNumber(2050, 1, 1) * 86400;
/** Clocks never went forth and back again within this [s]: the shortest times were the 12 days of Tucumán in 2004. */
const STRIDE = 7 * 86400;
/** Clocks change at a quarter of an hour in UTC; where not, the second is searched for [s]. */
const QUARTER = 900;
const tables = new Map<string, ZoneTable>();

/** Table of a zone, made once. Covers 1990-2049. Throws a RangeError for a name that is not an IANA zone. */
export function zoneTable(timeZone: string): ZoneTable {
  const known = tables.get(timeZone);
  if (known) return known;
  const made = makeTable(timeZone);
  tables.set(timeZone, made);
  return made;
}

/** True for an IANA zone name that the runtime knows. */
export function isTimeZone(name: string): boolean {
  if (tables.has(name)) return true;
  try {
    formatIn(name, {});
    return true;
  } catch {
    return false;
  }
}

function makeTable(timeZone: string): ZoneTable {
  const readOffset = offsetReader(timeZone);
  const starts: number[] = [Number.NEGATIVE_INFINITY];
  const offsets: number[] = [readOffset(FROM)];
  for (let from = FROM; from < TO; from += STRIDE) {
    const before = offsets[offsets.length - 1] as number;
    const after = readOffset(from + STRIDE);
    if (after === before) continue;
    const quarter = firstOther(readOffset, before, { low: from, high: from + STRIDE, unit: QUARTER });
    const isExact = readOffset(quarter - 1) === before;
    starts.push(isExact ? quarter : firstOther(readOffset, before, { low: quarter - QUARTER, high: quarter, unit: 1 }));
    offsets.push(after);
  }

  let last = 0;
  const segmentAt = (utc: number): number => {
    if (utc >= (starts[last] as number) && (last + 1 === starts.length || utc < (starts[last + 1] as number)))
      return last;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= utc) low = middle;
      else high = middle - 1;
    }
    last = low;
    return low;
  };
  const offsetAt = (utc: number): number => offsets[segmentAt(utc)] as number;

  /** Span of local readings of one offset, without those that a neighbouring offset has too. */
  const spanOf = (segment: number): { from: number; to: number; offset: number } => {
    const offset = offsets[segment] as number;
    const start = starts[segment] as number;
    const end = starts[segment + 1] ?? Number.POSITIVE_INFINITY;
    return {
      from: start + Math.max(offset, offsets[segment - 1] ?? offset),
      to: end + Math.min(offset, offsets[segment + 1] ?? offset),
      offset,
    };
  };

  return {
    timeZone,
    uniqueSpanAt(local) {
      for (const segment of [segmentAt(local - 86400), segmentAt(local + 86400)]) {
        const span = spanOf(segment);
        if (local >= span.from && local < span.to) return span;
      }
      return null;
    },
    offsetAt,
    localFromUtc: (utc) => utc + offsetAt(utc),
    utcFromLocal(local) {
      // The two offsets that can apply are those half a day or so before and after the wall-clock reading.
      const before = offsetAt(local - 86400);
      const after = offsetAt(local + 86400);
      const early = local - before;
      const late = local - after;
      const earlyHolds = offsetAt(early) === before;
      const lateHolds = offsetAt(late) === after;
      if (early === late) return { status: "unique", utcSeconds: early };
      if (earlyHolds && lateHolds) {
        return { status: "repeated", firstUtcSeconds: Math.min(early, late), secondUtcSeconds: Math.max(early, late) };
      }
      if (earlyHolds) return { status: "unique", utcSeconds: early };
      if (lateHolds) return { status: "unique", utcSeconds: late };
      return { status: "missing", shiftedUtcSeconds: early };
    },
  };
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

function formatIn(timeZone: string, parts: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone, ...parts });
  } catch {
    throw new RangeError(`"${timeZone}" is not an IANA time zone.`);
  }
}

function offsetReader(timeZone: string): (utcSeconds: number) => number {
  const format = formatIn(timeZone, {
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  });
  // `7/6/2026, 08:15:00`: taking the text apart costs a third of what the formatter's parts do.
  return (utc) => {
    const numbers = format.format(utc * 1000).match(/\d+/g) ?? [];
    const [month, day, year, hour, minute, second] = numbers.map(Number) as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const days = dayNumber(year, month, day);
    const seconds = hour * 3600 + minute * 60 + second;
    return days * 86400 + seconds - utc;
  };
}
