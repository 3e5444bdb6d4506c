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
    const { cells } = splitRows(sample, candidate, 300);
    const byCount = new Map<number, number>();
    for (const row of cells) {
      if (row.length < 2) continue;
      const dated = row.slice(0, 12).some((cell) => cellForm(cell) !== null);
      byCount.set(row.length, (byCount.get(row.length) ?? 0) + (dated ? 2 : 1));
    }
    const score = Math.max(0, ...byCount.values());
    if (score > bestScore) {
      bestScore = score;
      best = candidate;
    }
  }
  return { delimiter: best, hinted: false, bodyStart: 0 };
}
