import { dayNumber } from "./civil-date";
import { type OffsetStretch, ZoneTransitions } from "./zone-transitions";

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

/** Local readings are at most this far from UTC [s]. */
const DAY = 86400;
const tables = new Map<string, ZoneTable>();

/**
 * Table of a zone, made once; grows as instants are asked for. Covers 1990-2049. Throws a RangeError for a name that is
 * not an IANA zone.
 */
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
  const known = new ZoneTransitions(offsetReader(timeZone));
  const offsetAt = (utc: number): number => known.offsetAt(utc);

  return {
    timeZone,
    uniqueSpanAt(local) {
      for (const utc of [local - DAY, local + DAY]) {
        const span = localSpan(known.stretchAt(utc));
        if (local >= span.from && local < span.to) return span;
      }
      return null;
    },
    offsetAt,
    localFromUtc: (utc) => utc + offsetAt(utc),
    utcFromLocal(local) {
      // The two offsets that can apply are those half a day or so before and after the wall-clock reading.
      const before = offsetAt(local - DAY);
      const after = offsetAt(local + DAY);
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

/** Local readings of one offset, without those that a neighbouring offset has too. */
function localSpan({ from, to, offset, before, after }: OffsetStretch): { from: number; to: number; offset: number } {
  return { from: from + Math.max(offset, before), to: to + Math.min(offset, after), offset };
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
