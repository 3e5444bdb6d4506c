export type DecimalMark = "." | ",";

/**
 * Decimal mark of a table's numbers. `22,4` says comma, `72.4` dot; groups of three (`104,512`) are thousands unless
 * the fields are parted by semicolons or tabs and nothing in the file has a dot.
 */
export function detectDecimal(samples: Iterable<string>, delimiter: string): DecimalMark | null {
  let comma = 0;
  let dot = 0;
  let commaGroups = 0;
  let dotGroups = 0;
  for (const raw of samples) {
    const text = raw.trim();
    const match = /^[-+]?[\d.,'\s\u00a0\u202f]*\d/.exec(text);
    if (!match) continue;
    const digits = match[0].replace(/[\s\u00a0\u202f'+-]/g, "");
    const lastComma = digits.lastIndexOf(",");
    const lastDot = digits.lastIndexOf(".");
    if (lastComma < 0 && lastDot < 0) continue;
    if (lastComma >= 0 && lastDot >= 0) {
      if (lastComma > lastDot) comma++;
      else dot++;
    } else if (lastComma >= 0) {
      if (/^\d{1,3}(,\d{3})+$/.test(digits) && !digits.startsWith("0,")) commaGroups++;
      else if (digits.indexOf(",") === lastComma) comma++;
    } else if (/^\d{1,3}(\.\d{3}){2,}$/.test(digits)) dotGroups++;
    else dot++;
  }
  if (comma > dot) return ",";
  if (dot > 0) return ".";
  if (dotGroups > 0 && comma === 0) return ",";
  if (commaGroups > 0) return delimiter === "," ? "." : ",";
  return null;
}

const ZERO = 48;
const POWERS = Array.from({ length: 16 }, (_, i) => 10 ** i);

/**
 * A plain number (`-12.5`, blanks around it allowed), or NaN when the text is anything else. Digits are gathered as an
 * integer and divided once, which rounds as exactly as reading the text would while they stay below 2^53.
 */
export function plainNumber(text: string, mark: DecimalMark): number {
  const markCode = mark.charCodeAt(0);
  let i = 0;
  let end = text.length;
  while (i < end && text.charCodeAt(i) === 32) i++;
  while (end > i && text.charCodeAt(end - 1) === 32) end--;
  let negative = false;
  if (text.charCodeAt(i) === 45) {
    negative = true;
    i++;
  }
  if (end - i > 15 || i >= end) return Number.NaN;
  let digits = 0;
  let decimals = -1;
  let whole = 0;
  for (; i < end; i++) {
    const code = text.charCodeAt(i);
    if (code >= ZERO && code <= ZERO + 9) {
      whole = whole * 10 + (code - ZERO);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === markCode && decimals < 0) {
      decimals = 0;
    } else {
      return Number.NaN;
    }
  }
  if (digits === 0) return Number.NaN;
  const value = decimals > 0 ? whole / (POWERS[decimals] as number) : whole;
  // Taken from zero, so that -0.0 is 0.
  return negative ? 0 - value : value;
}

/** A number with thousands marks, a sign or an exponent; NaN when it is none. */
export function dressedNumber(text: string, mark: DecimalMark): number {
  const trimmed = text.trim().replace(/\u2212/g, "-");
  const [group, decimal] = mark === "." ? [",", "\\."] : ["\\.", ","];
  const grouped = new RegExp(`^[-+]?\\d{1,3}(?:[${group}'\\s\\u00a0\\u202f]\\d{3})+(?:${decimal}\\d*)?$`);
  const plain = new RegExp(`^[-+]?(?:\\d+(?:${decimal}\\d*)?|${decimal}\\d+)(?:[eE][-+]?\\d{1,3})?$`);
  if (!grouped.test(trimmed) && !plain.test(trimmed)) return Number.NaN;
  const bare = trimmed.replace(mark === "." ? /[,'\s\u00a0\u202f]/g : /[.'\s\u00a0\u202f]/g, "");
  return Number(mark === "," ? bare.replace(",", ".") : bare);
}
