import Papa from "papaparse";

export type Cell = string | number | boolean | null;

/**
 * A table as CSV text (RFC 4180) with a heading line. Spreadsheets run a text cell that begins with = + - or @ (or with a
 * tab or line end before it) as a formula: such cells get an apostrophe in front. Numbers are left as they are.
 */
export function csvText(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const data = rows.map((row) => row.map((cell) => (typeof cell === "string" ? disarmed(cell) : cell)));
  return `${Papa.unparse({ fields: [...columns], data }, { newline: "\r\n" })}\r\n`;
}

const disarmed = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);
