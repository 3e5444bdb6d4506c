import { splitRows } from "./split-rows";
import { cellForm } from "./time-source";

const CANDIDATES = [",", ";", "\t", "|"];
const SAMPLE_CHARACTERS = 64 * 1024;

/** The mark between fields, named by a `sep=` line or found by trial; `bodyStart` is where the table's text begins. */
export type DelimiterVerdict = { delimiter: string | null; hinted: boolean; bodyStart: number };

/**
 * Tries each mark on the first lines: the one that gives the most rows an equal number of fields (more than one), a
 * row counting double when one of its fields is a date or a time.
 */
export function detectDelimiter(text: string): DelimiterVerdict {
  const hint = /^\s*"?sep=(.)"?[ \t]*(?:\r\n|\n|\r)/i.exec(text.slice(0, 20));
  if (hint) return { delimiter: hint[1] as string, hinted: true, bodyStart: hint[0].length };
  const sample = text.slice(0, SAMPLE_CHARACTERS);
  let best: string | null = null;
  let bestScore = 0;
  for (const candidate of CANDIDATES) {
    if (!sample.includes(candidate)) continue;
    const rows = splitRows(sample, candidate, { maxRows: 300 });
    const byCount = new Map<number, number>();
    for (let row = 0; row < rows.count; row++) {
      const width = rows.width(row);
      if (width < 2) continue;
      let dated = false;
      for (let column = 0; column < Math.min(width, 12) && !dated; column++)
        dated = cellForm(rows.cell(row, column)) !== null;
      byCount.set(width, (byCount.get(width) ?? 0) + (dated ? 2 : 1));
    }
    const score = Math.max(0, ...byCount.values());
    if (score > bestScore) {
      bestScore = score;
      best = candidate;
    }
  }
  return { delimiter: best, hinted: false, bodyStart: 0 };
}
