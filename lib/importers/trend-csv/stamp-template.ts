import type { Fields } from "./rows";
import { QUOTE } from "./rows";

const ZERO = 48;
const COLON = 58;

/**
 * The last stamp that was read as text, as a pattern of bytes: `2026-07-06 08:15` says that the same date with another
 * time of day of the same form needs no second look. Stamps of one day then cost a few comparisons each.
 */
export class StampTemplate {
  /** Seconds of the day of the stamp that matched last. */
  seconds = 0;
  private bytes = new Uint8Array(64);
  private length = -1;
  /** Where the two digits of the hour stand. */
  private hourAt = 0;
  private hasSeconds = false;
  private half: "" | "am" | "pm" = "";

  /** Remembers a stamp that was read; forgets the last one when it has not the plain form `HH:MM` or `HH:MM:SS`. */
  learn(fields: Fields, field: number): void {
    this.length = -1;
    const [from, to] = spanOf(fields, field);
    if (to - from > 64) return;
    const { bytes } = fields;
    let colon = from;
    while (colon < to && bytes[colon] !== COLON) colon++;
    const hourAt = colon - 2 - from;
    if (colon + 2 >= to || hourAt < 0 || !isDigitPair(bytes, colon - 2) || !isDigitPair(bytes, colon + 1)) return;
    // A digit before the hour would be part of it.
    if (hourAt > 0 && isDigit(bytes[colon - 3])) return;
    const hasSeconds = bytes[colon + 3] === COLON && colon + 6 <= to && isDigitPair(bytes, colon + 4);
    const rest = bytes.toString("latin1", colon + (hasSeconds ? 6 : 3), to);
    const half = /^\s?([AaPp])\.?[Mm]\.?$/.exec(rest)?.[1]?.toLowerCase();
    if (rest !== "" && !half) return;
    for (let i = from; i < to; i++) this.bytes[i - from] = bytes[i] as number;
    this.length = to - from;
    this.hourAt = hourAt;
    this.hasSeconds = hasSeconds;
    this.half = half === "a" ? "am" : half === "p" ? "pm" : "";
  }

  /** Whether a field is the remembered stamp at another time of day, which is then in `seconds`. */
  matches(fields: Fields, field: number): boolean {
    const [from, to] = spanOf(fields, field);
    if (to - from !== this.length) return false;
    const { bytes } = fields;
    const { hourAt, hasSeconds, half } = this;
    for (let i = 0; i < hourAt; i++) if (bytes[from + i] !== this.bytes[i]) return false;
    const timeEnd = hourAt + (hasSeconds ? 8 : 5);
    for (let i = timeEnd; i < this.length; i++) if (bytes[from + i] !== this.bytes[i]) return false;
    const at = from + hourAt;
    if (bytes[at + 2] !== COLON || !isDigitPair(bytes, at) || !isDigitPair(bytes, at + 3)) return false;
    let hour = pairAt(bytes, at);
    const minute = pairAt(bytes, at + 3);
    let second = 0;
    if (hasSeconds) {
      if (bytes[at + 5] !== COLON || !isDigitPair(bytes, at + 6)) return false;
      second = pairAt(bytes, at + 6);
    }
    if (hour > (half === "" ? 23 : 12) || minute > 59 || second > 59 || (half !== "" && hour < 1)) return false;
    if (half !== "") hour = (hour % 12) + (half === "pm" ? 12 : 0);
    this.seconds = hour * 3600 + minute * 60 + second;
    return true;
  }
}

const span: [number, number] = [0, 0];

/** First byte of a field and the one behind its last, without quotes about it. The pair is used again at the next call. */
function spanOf({ bytes, starts, quotes }: Fields, field: number): [number, number] {
  const from = starts[field] as number;
  const to = (starts[field + 1] as number) - 1;
  const quoted = quotes && to - from >= 2 && bytes[from] === QUOTE && bytes[to - 1] === QUOTE;
  span[0] = quoted ? from + 1 : from;
  span[1] = quoted ? to - 1 : to;
  return span;
}

const isDigit = (code: number | undefined): boolean => code !== undefined && code >= ZERO && code <= ZERO + 9;
const isDigitPair = (bytes: Uint8Array, at: number): boolean => isDigit(bytes[at]) && isDigit(bytes[at + 1]);
const pairAt = (bytes: Uint8Array, at: number): number =>
  ((bytes[at] as number) - ZERO) * 10 + ((bytes[at + 1] as number) - ZERO);
