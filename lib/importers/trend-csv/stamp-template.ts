const ZERO = 48;
const COLON = 58;
const MOST_BYTES = 64;

/**
 * A stamp that was read as text, as a pattern of bytes: `2026-07-06 08:15` says that the same date with another time of
 * day of the same form needs no second look. Stamps of one day then cost a few comparisons each.
 */
class StampTemplate {
  private readonly bytes = new Uint8Array(MOST_BYTES);
  length = -1;
  /** Where the digits of the hour stand, and how many there are. */
  private hourAt = 0;
  private hourDigits = 2;
  private hasSeconds = false;
  private half: "" | "am" | "pm" = "";
  /** What the reader of the text keeps with it. */
  mark = 0;

  /** Remembers a stamp; false when it has not the form `HH:MM` or `HH:MM:SS` with perhaps a word of half-day or zone. */
  learn(bytes: Buffer, from: number, to: number, mark: number): boolean {
    this.length = -1;
    if (to - from > MOST_BYTES) return false;
    let colon = from;
    while (colon < to && bytes[colon] !== COLON) colon++;
    if (colon + 3 > to || !isPair(bytes, colon + 1) || !isDigit(bytes[colon - 1])) return false;
    const hourDigits = isDigit(bytes[colon - 2]) && colon - 2 >= from ? 2 : 1;
    const hourAt = colon - hourDigits - from;
    // A digit before the hour would be part of it.
    if (hourAt < 0 || (hourAt > 0 && isDigit(bytes[from + hourAt - 1]))) return false;
    const hasSeconds = bytes[colon + 3] === COLON && colon + 6 <= to && isPair(bytes, colon + 4);
    const rest = bytes.toString("latin1", colon + (hasSeconds ? 6 : 3), to);
    if (/^[:.,\d]/.test(rest)) return false;
    const half = /^\s?([AaPp])\.?\s?[Mm]/.exec(rest)?.[1]?.toLowerCase();
    for (let i = from; i < to; i++) this.bytes[i - from] = bytes[i] as number;
    this.length = to - from;
    this.hourAt = hourAt;
    this.hourDigits = hourDigits;
    this.hasSeconds = hasSeconds;
    this.half = half === "a" ? "am" : half === "p" ? "pm" : "";
    this.mark = mark;
    return true;
  }

  /** Seconds of the day when bytes are the remembered stamp at another time, else -1. */
  secondsOf(bytes: Uint8Array, from: number, to: number): number {
    if (to - from !== this.length) return -1;
    const { hourAt, hourDigits, hasSeconds, half } = this;
    for (let i = 0; i < hourAt; i++) if (bytes[from + i] !== this.bytes[i]) return -1;
    const colon = hourAt + hourDigits;
    const timeEnd = colon + (hasSeconds ? 6 : 3);
    for (let i = timeEnd; i < this.length; i++) if (bytes[from + i] !== this.bytes[i]) return -1;
    const at = from + colon;
    if (bytes[at] !== COLON || !isPair(bytes, at + 1) || !isDigit(bytes[at - 1])) return -1;
    let hour = (bytes[at - 1] as number) - ZERO;
    if (hourDigits === 2) {
      if (!isDigit(bytes[at - 2])) return -1;
      hour += ((bytes[at - 2] as number) - ZERO) * 10;
    }
    const minute = pairAt(bytes, at + 1);
    let second = 0;
    if (hasSeconds) {
      if (bytes[at + 3] !== COLON || !isPair(bytes, at + 4)) return -1;
      second = pairAt(bytes, at + 4);
    }
    if (minute > 59 || second > 59) return -1;
    if (half === "") {
      if (hour > 23) return -1;
    } else {
      if (hour < 1 || hour > 12) return -1;
      hour = (hour % 12) + (half === "pm" ? 12 : 0);
    }
    return hour * 3600 + minute * 60 + second;
  }
}

/** Templates of the stamps that were read last: a day's hours may have one or two digits, before and after noon. */
export class StampTemplates {
  /** Of the stamp that matched last. */
  seconds = 0;
  mark = 0;
  private readonly templates = Array.from({ length: 4 }, () => new StampTemplate());
  private latest = 0;

  learn(bytes: Buffer, from: number, to: number, mark: number): void {
    const next = (this.latest + 1) % this.templates.length;
    if ((this.templates[next] as StampTemplate).learn(bytes, from, to, mark)) this.latest = next;
  }

  matches(bytes: Uint8Array, from: number, to: number): boolean {
    for (let k = 0; k < this.templates.length; k++) {
      const place = (this.latest + k) % this.templates.length;
      const template = this.templates[place] as StampTemplate;
      const seconds = template.secondsOf(bytes, from, to);
      if (seconds < 0) continue;
      this.seconds = seconds;
      this.mark = template.mark;
      this.latest = place;
      return true;
    }
    return false;
  }
}

const isDigit = (code: number | undefined): boolean => code !== undefined && code >= ZERO && code <= ZERO + 9;
const isPair = (bytes: Uint8Array, at: number): boolean => isDigit(bytes[at]) && isDigit(bytes[at + 1]);
const pairAt = (bytes: Uint8Array, at: number): number =>
  ((bytes[at] as number) - ZERO) * 10 + ((bytes[at + 1] as number) - ZERO);
