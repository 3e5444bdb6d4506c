export type DecimalMark = "." | ",";

/**
 * Decimal mark of a table's numbers. `22,4` says comma, `72.4` dot; groups of three (`104,512`) are thousands unless
 * the fields are parted by semicolons or tabs and nothing in the file has a dot.
 */
export const detectDecimal = (samples: Iterable<string>, delimiter: string): DecimalMark | null =>
  decimalOf(countMarks(samples), delimiter);

/** How often numbers have each mark, and groups of three that either mark may make. */
export type MarkCounts = { comma: number; dot: number; commaGroups: number; dotGroups: number };

export function countMarks(samples: Iterable<string>, counts?: MarkCounts): MarkCounts {
  let { comma, dot, commaGroups, dotGroups } = counts ?? { comma: 0, dot: 0, commaGroups: 0, dotGroups: 0 };
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
  return { comma, dot, commaGroups, dotGroups };
}

export function decimalOf({ comma, dot, commaGroups, dotGroups }: MarkCounts, delimiter: string): DecimalMark | null {
  if (comma > dot) return ",";
  if (dot > 0) return ".";
  if (dotGroups > 0 && comma === 0) return ",";
  if (commaGroups > 0) return delimiter === "," ? "." : ",";
  return null;
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
