import type { DecimalMark } from "./number-format";
import { QUOTE, type Rows } from "./rows";

/** What a cell read as bytes turned out to be. */
export const EMPTY_CELL = 2;
export const PLAIN_NUMBER = 1;
export const OTHER_CELL = 0;

const ZERO = 48;
const MINUS = 45;
const SPACE = 32;
const MOST_DIGITS = 15;
const POWERS = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);

/**
 * Reads the cells of one column that are plain numbers (`-12.5`, blanks around it allowed) or empty straight from their
 * bytes; any other cell is left to be looked at as text. Digits are gathered as an integer and divided once, which
 * rounds as exactly as reading the text would while they stay below 2^53.
 */
export function readPlainNumbers(
  { fields }: Rows,
  rowIndex: Int32Array,
  column: number,
  mark: DecimalMark,
  out: { code: Uint8Array; value: Float64Array },
): void {
  const { bytes, rowFirst, starts, apart, quotes } = fields;
  const markCode = mark.charCodeAt(0);
  const hasApart = apart.size > 0;
  const { code: codes, value: values } = out;
  for (let i = 0; i < rowIndex.length; i++) {
    const row = rowIndex[i] as number;
    if (hasApart && apart.has(row)) {
      codes[i] = OTHER_CELL;
      continue;
    }
    const field = (rowFirst[row] as number) + column;
    if (field + 1 >= (rowFirst[row + 1] as number)) {
      codes[i] = EMPTY_CELL;
      continue;
    }
    let at = starts[field] as number;
    let end = (starts[field + 1] as number) - 1;
    if (quotes && end - at >= 2 && bytes[at] === QUOTE && bytes[end - 1] === QUOTE) {
      at++;
      end--;
    }
    if (at === end) {
      codes[i] = EMPTY_CELL;
      continue;
    }
    while (at < end && bytes[at] === SPACE) at++;
    while (end > at && bytes[end - 1] === SPACE) end--;
    const negative = bytes[at] === MINUS;
    if (negative) at++;
    if (at === end || end - at > MOST_DIGITS) {
      codes[i] = OTHER_CELL;
      continue;
    }
    const from = at;
    let whole = 0;
    let point = -1;
    for (; at < end; at++) {
      const digit = (bytes[at] as number) - ZERO;
      if (digit >= 0 && digit <= 9) whole = whole * 10 + digit;
      else if (bytes[at] === markCode && point < 0) point = at;
      else break;
    }
    const decimals = point < 0 ? 0 : end - 1 - point;
    const hasDigits = end - from > (point < 0 ? 0 : 1);
    if (at < end || !hasDigits) {
      codes[i] = OTHER_CELL;
      continue;
    }
    codes[i] = PLAIN_NUMBER;
    const value = decimals > 0 ? whole / (POWERS[decimals] as number) : whole;
    // Taken from zero, so that -0.0 is 0.
    values[i] = negative ? 0 - value : value;
  }
}
