export type CellNumber =
  | { status: "ok"; value: number; repair: string | null }
  | { status: "blank" }
  | { status: "wrong"; why: string };

const PLAIN = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;
const DECIMAL_COMMA = /^[+-]?\d*,\d+$/;
const THOUSANDS = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/;

/**
 * A number as people type it. A comma followed by exactly three digits may be either sign: between commas it stands
 * for thousands, since the cell was quoted for it; between semicolons it is not guessed.
 */
export function cellNumber(text: string, decimalComma: boolean): CellNumber {
  if (text === "") return { status: "blank" };
  if (PLAIN.test(text)) return { status: "ok", value: Number(text), repair: null };
  if (THOUSANDS.test(text)) {
    if (decimalComma && !text.includes(".")) {
      const digits = text.replace(/,/g, "");
      return {
        status: "wrong",
        why: `"${text}" can be read in two ways; write ${digits} or ${text.replace(",", ".")}`,
      };
    }
    const value = Number(text.replace(/,/g, ""));
    return { status: "ok", value, repair: `"${text}" read as ${value}` };
  }
  if (DECIMAL_COMMA.test(text)) {
    const value = Number(text.replace(",", "."));
    return { status: "ok", value, repair: decimalComma ? null : `"${text}" read as ${value}` };
  }
  return { status: "wrong", why: `"${text}" is not a number; write digits only, the unit stands in the heading` };
}
