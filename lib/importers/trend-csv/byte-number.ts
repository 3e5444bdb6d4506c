const ZERO = 48;
const MINUS = 45;
const MOST_DIGITS = 15;
const POWERS = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);

/** Reads plain numbers (`-12.5`) from bytes. Digits are gathered as an integer and divided once, which rounds exactly. */
export class ByteNumber {
  /** Digits behind its mark. */
  decimals = 0;

  /**
   * Puts the number that begins at `from` into `out[index]`, or NaN where there is none, and returns where it ends; whether
   * its field ends there is for the caller to see. A fraction that is returned would be made an object, millions of times.
   */
  readInto(out: Float64Array, index: number, bytes: Uint8Array, from: number, markCode: number): number {
    let at = from;
    const negative = bytes[at] === MINUS;
    if (negative) at++;
    const first = at;
    let whole = 0;
    // Beyond the last byte the difference is no number, and no digit.
    let digit = (bytes[at] as number) - ZERO;
    while (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digit = (bytes[++at] as number) - ZERO;
    }
    let digits = at - first;
    let decimals = 0;
    if (bytes[at] === markCode) {
      const fraction = ++at;
      digit = (bytes[at] as number) - ZERO;
      while (digit >= 0 && digit <= 9) {
        whole = whole * 10 + digit;
        digit = (bytes[++at] as number) - ZERO;
      }
      decimals = at - fraction;
      digits += decimals;
    }
    this.decimals = decimals;
    if (digits === 0 || at - first > MOST_DIGITS) {
      out[index] = Number.NaN;
      return at;
    }
    const value = decimals > 0 ? whole / (POWERS[decimals] as number) : whole;
    // Taken from zero, so that -0.0 is 0.
    out[index] = negative ? 0 - value : value;
    return at;
  }
}
