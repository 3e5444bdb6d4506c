import Papa from "papaparse";

/** One record of a CSV text and the physical line on which it starts. */
export type TableRecord = { line: number; cells: readonly string[] };

/**
 * Records of a CSV text with one delimiter, cells trimmed. A quotation mark that is never closed swallows the rest of
 * the file: the record where it opens is named.
 */
export function splitTable(text: string, delimiter: string): { records: TableRecord[]; openQuoteLine: number | null } {
  const unix = text.replace(/\r\n?/g, "\n");
  const records: TableRecord[] = [];
  let line = 1;
  let from = 0;
  let openQuoteLine: number | null = null;
  Papa.parse<string[]>(unix, {
    delimiter,
    newline: "\n",
    step: ({ data, errors, meta }) => {
      if (errors.some((error) => error.code === "MissingQuotes")) openQuoteLine ??= line;
      records.push({ line, cells: data.map((cell) => cell.trim()) });
      line += lineBreaks(unix.slice(from, meta.cursor));
      from = meta.cursor;
    },
  });
  while (records.at(-1)?.cells.every((cell) => cell === "")) records.pop();
  return { records, openQuoteLine };
}

const lineBreaks = (text: string): number => text.match(/\n/g)?.length ?? 0;
