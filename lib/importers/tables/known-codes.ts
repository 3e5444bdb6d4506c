import type { RowCells } from "./row-cells";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** The code that a spreadsheet has turned into a date: `14-Feb` and `Feb-14` were `2-14`. Null when it is no such date. */
export function codeBehindDate(text: string): string | null {
  const match = /^(?:(\d{1,2})[- ]([a-z]{3})|([a-z]{3})[- ](\d{1,2}))$/i.exec(text);
  if (!match) return null;
  const month = MONTHS.indexOf((match[2] ?? match[3] ?? "").toLowerCase()) + 1;
  return month === 0 ? null : `${month}-${Number(match[1] ?? match[4])}`;
}

/** Codes compare without case, spaces and leading apostrophes. */
export const looseCode = (code: string): string => code.toLowerCase().replace(/[\s']/g, "");

/** Finds codes of the building. A looser spelling that fits exactly one is repaired; anything else is a fault. */
export function codeFinder(noun: "zone" | "desk", codes: readonly string[]) {
  const exact = new Set(codes);
  const loose = new Map<string, string[]>();
  for (const code of codes) loose.set(looseCode(code), [...(loose.get(looseCode(code)) ?? []), code]);
  return (text: string, row: RowCells): string | null => {
    if (exact.has(text)) return text;
    const [only, ...others] = loose.get(looseCode(text)) ?? [];
    if (only !== undefined && others.length === 0) {
      row.repair(`${noun}-spelling`, `${noun} "${text}" read as ${only}`);
      return only;
    }
    const meant = codeBehindDate(text);
    const hint = meant && exact.has(meant) ? ` (a spreadsheet seems to have turned ${meant} into a date)` : "";
    row.fault(
      `${noun}-unknown`,
      `${noun} ${text} does not exist in this building${hint}; add it first or correct the code`,
    );
    return null;
  };
}
