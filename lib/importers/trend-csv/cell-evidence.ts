import { NUMBER, type ReadCells } from "./cell-reader";

/** What the cells of one column (or of one point of a long table) hold: enough to tell numbers from states. Plain values. */
export type CellEvidence = {
  /** Cells in all, and those that are blank. */
  cells: number;
  blanks: number;
  numbers: number;
  /** Cells that hold a word, and cells that hold a word of failure. */
  words: number;
  failures: number;
  /** Numbers that are 0, 1, and neither. */
  zeros: number;
  ones: number;
  /** Unit texts written in the cells, with their counts. */
  units: Record<string, number>;
};

export const NO_EVIDENCE: CellEvidence = {
  cells: 0,
  blanks: 0,
  numbers: 0,
  words: 0,
  failures: 0,
  zeros: 0,
  ones: 0,
  units: {},
};

export function evidenceOf(cells: ReadCells): CellEvidence {
  let zeros = 0;
  let ones = 0;
  for (let i = 0; i < cells.code.length; i++) {
    if (cells.code[i] !== NUMBER) continue;
    if (cells.value[i] === 0) zeros++;
    else if (cells.value[i] === 1) ones++;
  }
  return {
    cells: cells.code.length,
    blanks: cells.blanks,
    numbers: cells.numbers,
    words: cells.wordCount,
    failures: cells.failureCount,
    zeros,
    ones,
    units: Object.fromEntries(cells.units),
  };
}

export function addEvidence(a: CellEvidence, b: CellEvidence): CellEvidence {
  const units = { ...a.units };
  for (const [text, count] of Object.entries(b.units)) units[text] = (units[text] ?? 0) + count;
  return {
    cells: a.cells + b.cells,
    blanks: a.blanks + b.blanks,
    numbers: a.numbers + b.numbers,
    words: a.words + b.words,
    failures: a.failures + b.failures,
    zeros: a.zeros + b.zeros,
    ones: a.ones + b.ones,
    units,
  };
}
