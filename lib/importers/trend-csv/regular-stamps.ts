import type { ZoneTable } from "@/lib/time/zone-table";
import { areEqual } from "./byte-compare";
import { type DateTally, dayOfKey } from "./date-order";
import { standardOffset } from "./resolve-local";
import { QUOTE } from "./rows";
import { cleanStamp, stampForm, trimJoint } from "./stamp-column";
import { readDate, readOffset, readTime, timeStart } from "./stamp-parts";
import { StampTemplates } from "./stamp-template";
import type { ClockRule, DateOrder } from "./trend-file";
import type { ZoneWords } from "./zone-words";

const DAY = 86400;
const LF = 10;
const CR = 13;

export type RegularClock = {
  /** How every stamp is written (`stampForm`). */
  form: string;
  order: DateOrder;
  zone: ZoneTable;
  words: ZoneWords;
  clock: ClockRule | undefined;
  saysUtc: boolean;
};

type Day = { startLocal: number; offset: number; key: number; isNumeric: boolean };
type DateSpan = { first: number; last: number; line: number };

/**
 * Reads stamps straight from their bytes to UTC seconds, as long as all are written alike and stand for one instant each.
 * Any other stamp gives NaN: the rows are then read the long way, which knows what to make of it.
 */
export class RegularStamps {
  private readonly templates = new StampTemplates();
  private readonly days: Day[] = [];
  private span = { from: 0, to: 0, offset: 0 };
  /** What was seen of numeric dates, to be added to the tally once the rows turn out regular. */
  private readonly dates = new Map<number, DateSpan>();
  private longestStep = 0;
  private lastDay = -1;
  private lastSeconds = 0;
  private current: DateSpan | null = null;

  /** Where the stamp that was asked for last ends, and its instant [UTC seconds]; NaN when it is not regular. */
  end = 0;
  utc = Number.NaN;
  /** Where the stamp read last stands and how long it is: many rows of a long table share it. */
  private lastFrom = 0;
  private lastLength = 0;
  private readonly view: DataView;

  constructor(
    private readonly bytes: Buffer,
    private readonly clock: RegularClock,
  ) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  }

  /** Reads the field that begins at `from`, with quotes about it or without. */
  readField(from: number, mark: number, line: number): void {
    const isQuoted = this.bytes[from] === QUOTE;
    this.readAt(isQuoted ? from + 1 : from, isQuoted ? QUOTE : mark, line);
    if (isQuoted && this.bytes[this.end++] !== QUOTE) this.utc = Number.NaN;
  }

  /** Reads the stamp that begins at `from` and goes on to `mark` or the end of its line. */
  private readAt(from: number, mark: number, line: number): void {
    const { bytes, lastLength } = this;
    if (lastLength > 0 && bytes[from + lastLength] === mark && areEqual(this.view, this.lastFrom, from, lastLength)) {
      this.end = from + lastLength;
      return;
    }
    let to = from;
    while (to < bytes.length && bytes[to] !== mark && bytes[to] !== LF && bytes[to] !== CR) to++;
    this.end = to;
    this.utc = this.read(from, to, line);
    this.lastFrom = from;
    this.lastLength = to - from;
  }

  /** UTC seconds of the stamp in `[from, to)`, NaN when it is not regular. */
  private read(from: number, to: number, line: number): number {
    if (!this.templates.matches(this.bytes, from, to) && !this.readText(from, to)) return Number.NaN;
    const { seconds, mark } = this.templates;
    const day = this.days[mark] as Day;
    if (day.isNumeric) this.seeDate(mark, day.key, seconds, line);
    const local = day.startLocal + seconds;
    if (!Number.isNaN(day.offset)) return local - day.offset;
    const { span } = this;
    if (local >= span.from && local < span.to) return local - span.offset;
    const found = this.clock.zone.uniqueSpanAt(local);
    if (!found) return Number.NaN;
    this.span = found;
    return local - found.offset;
  }

  /** Adds the dates that were seen to those of the file. */
  tell(tally: DateTally): void {
    for (const [key, { first, last, line }] of this.dates) {
      const known = tally.dates.get(key);
      if (!known) tally.dates.set(key, { first, last, line });
      else {
        known.first = Math.min(known.first, first);
        known.last = Math.max(known.last, last);
      }
    }
    tally.longestStep = Math.max(tally.longestStep, this.longestStep);
  }

  private seeDate(mark: number, key: number, seconds: number, line: number): void {
    if (mark !== this.lastDay) {
      const known = this.dates.get(key);
      if (known && this.current === known)
        this.longestStep = Math.max(this.longestStep, Math.abs(seconds - this.lastSeconds));
      this.lastDay = mark;
      this.current = known ?? { first: seconds, last: seconds, line };
      if (!known) this.dates.set(key, this.current);
    } else {
      const step = Math.abs(seconds - this.lastSeconds);
      if (step > this.longestStep) this.longestStep = step;
    }
    this.lastSeconds = seconds;
    const current = this.current as DateSpan;
    if (seconds < current.first) current.first = seconds;
    if (seconds > current.last) current.last = seconds;
  }

  /** Reads a stamp as text and learns its form; false when it is not regular. */
  private readText(from: number, to: number): boolean {
    const { bytes } = this;
    const text = cleanStamp(bytes.toString("latin1", from, to));
    const at = timeStart(text);
    if (at < 1 || text.length !== to - from) return false;
    const date = readDate(trimJoint(text.slice(0, at)));
    const time = readTime(text.slice(at));
    if (!date || !time || !Number.isInteger(time.seconds)) return false;
    const hasZone = time.zoneText !== "";
    if (stampForm(date.form + date.separator, time, hasZone) !== this.clock.form) return false;
    const isNumeric = date.form === "numeric";
    const day = dayOfKey(date.key, isNumeric ? this.clock.order : "written");
    const own = hasZone ? readOffset(time.zoneText, this.clock.words) : this.clock.saysUtc ? 0 : Number.NaN;
    if (day === null || own === null) return false;
    const startLocal = day * DAY;
    const isStandard = Number.isNaN(own) && this.clock.clock === "standard-time-all-year";
    const offset = isStandard ? standardOffset(this.clock.zone, startLocal) : own;
    this.days.push({ startLocal, offset, key: date.key, isNumeric });
    this.templates.learn(bytes, from, to, this.days.length - 1);
    return this.templates.matches(bytes, from, to);
  }
}
