/** Rows of a delimited text: the cells of each, and the physical line (1-based) on which it begins. */
export type Rows = {
  cells: string[][];
  lines: number[];
  /** Rows (by index) with a quote that never closes. */
  malformed: Set<number>;
  /** False when the text ends in the middle of a line, as a broken download does. */
  endsWithLineEnd: boolean;
};

const QUOTE = 34;
const CR = 13;
const LF = 10;

/**
 * Splits text into rows by one delimiter. Quoted fields may hold delimiters, doubled quotes and line ends; a quote
 * that is not closed within 1,000 characters spoils its own line only, not the rest of the file. Unlike a general CSV
 * parser it keeps the physical line of each row.
 */
export function splitRows(text: string, delimiter: string, maxRows = Number.POSITIVE_INFINITY): Rows {
  const rows: Rows = { cells: [], lines: [], malformed: new Set(), endsWithLineEnd: true };
  const mark = delimiter.charCodeAt(0);
  const length = text.length;
  const hasBraces = text.includes("{");
  let at = 0;
  let line = 1;
  while (at < length && rows.cells.length < maxRows) {
    const cells: string[] = [];
    rows.lines.push(line);
    let ended = false;
    while (!ended) {
      if (text.charCodeAt(at) === QUOTE) {
        const close = closingQuote(text, at, mark);
        if (close > 0) {
          const inner = text.slice(at + 1, close);
          for (let i = at + 1; i < close; i++) if (text.charCodeAt(i) === LF) line++;
          cells.push(inner.includes('""') ? inner.replaceAll('""', '"') : inner);
          at = close + 1;
        } else {
          rows.malformed.add(rows.lines.length - 1);
          const end = fieldEnd(text, at, mark);
          cells.push(text.slice(at, end));
          at = end;
        }
      } else {
        const end = fieldEnd(text, at, mark);
        cells.push(text.slice(at, end));
        at = end;
      }
      const code = text.charCodeAt(at);
      if (code === mark) {
        at++;
        continue;
      }
      ended = true;
      if (at >= length) rows.endsWithLineEnd = false;
      else at += code === CR && text.charCodeAt(at + 1) === LF ? 2 : 1;
    }
    rows.cells.push(hasBraces ? joinBraces(cells, delimiter) : cells);
    line++;
  }
  return rows;
}

/** Status words in braces (`{alarm,unacknowledged}`) are one field though nobody quotes them. */
function joinBraces(cells: string[], delimiter: string): string[] {
  const joined: string[] = [];
  for (let i = 0; i < cells.length; i++) {
    let cell = cells[i] as string;
    if (cell.includes("{") && !cell.includes("}")) {
      const close = cells.findIndex((other, k) => k > i && other.includes("}"));
      if (close > i && !cells.slice(i + 1, close).some((other) => other.includes("{"))) {
        cell = cells.slice(i, close + 1).join(delimiter);
        i = close;
      }
    }
    joined.push(cell);
  }
  return joined;
}

function fieldEnd(text: string, from: number, mark: number): number {
  for (let i = from; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === mark || code === LF || code === CR) return i;
  }
  return text.length;
}

/** Index of the quote that closes a field opened at `from`, or -1. */
function closingQuote(text: string, from: number, mark: number): number {
  const stop = Math.min(text.length, from + 1000);
  for (let i = from + 1; i < stop; i++) {
    if (text.charCodeAt(i) !== QUOTE) continue;
    const next = text.charCodeAt(i + 1);
    if (next === QUOTE) i++;
    else if (i + 1 >= text.length || next === mark || next === LF || next === CR) return i;
    else return -1;
  }
  return -1;
}
