import { type Cell, readCell } from "./cell";
import type { DecimalMark } from "./number-format";
import { EMPTY_CELL, OTHER_CELL, PLAIN_NUMBER, readPlainNumbers } from "./read-plain-numbers";
import type { Rows } from "./rows";

export const NUMBER = PLAIN_NUMBER;
export const MISSING = EMPTY_CELL;
export const EVENT = 3;
/** A word such as "Fault": missing among numbers, a state among words. `value` is its number in the word table. */
export const FAILURE = 4;
export const WORD = 5;
export const STATUS_GOOD = 0;
export const STATUS_FLAGGED = 1;
export const STATUS_BAD = 2;

/** Texts remembered at a time: values that carry their unit are as many as there are readings. */
const MOST_TEXTS = 100_000;

/** Cells of one column (or of one point of a long table) as numbers and codes, in step with the rows asked for. */
export type ReadCells = {
  code: Uint8Array;
  value: Float64Array;
  /** Statuses written in the cells themselves; null when there are none. */
  status: Uint8Array | null;
  blanks: number;
  numbers: number;
  events: number;
  /** Number of cells that hold a word (failure words not counted), and that hold a failure word. */
  wordCount: number;
  failureCount: number;
  /** Unit texts written in the cells, with their counts. */
  units: Map<string, number>;
  /** Unit text of each number that has one, by index. */
  unitAt: Map<number, string>;
};

/** Reads cells, remembering every text that is no plain number, so that each is looked at once. */
export class CellReader {
  readonly words: string[] = [];
  private readonly wordIds = new Map<string, number>();
  private readonly seen = new Map<string, Cell>();

  constructor(readonly mark: DecimalMark) {}

  wordId(word: string): number {
    let id = this.wordIds.get(word);
    if (id === undefined) {
      id = this.words.length;
      this.words.push(word);
      this.wordIds.set(word, id);
    }
    return id;
  }

  read(rows: Rows, rowIndex: Int32Array, column: number): ReadCells {
    const n = rowIndex.length;
    const out: ReadCells = {
      code: new Uint8Array(n),
      value: new Float64Array(n),
      status: null,
      blanks: 0,
      numbers: 0,
      events: 0,
      wordCount: 0,
      failureCount: 0,
      units: new Map(),
      unitAt: new Map(),
    };
    readPlainNumbers(rows, rowIndex, column, this.mark, out);
    for (let i = 0; i < n; i++) {
      const code = out.code[i];
      if (code === PLAIN_NUMBER) out.numbers++;
      else if (code === OTHER_CELL) this.readDressed(rows.cell(rowIndex[i] as number, column), i, out);
      else out.blanks++;
    }
    return out;
  }

  private readDressed(text: string, i: number, out: ReadCells): void {
    let cell = this.seen.get(text);
    if (!cell) {
      if (this.seen.size >= MOST_TEXTS) this.seen.clear();
      cell = readCell(text, this.mark);
      this.seen.set(text, cell);
    }
    if (cell.kind === "missing") {
      out.code[i] = MISSING;
      if (text.trim() === "") out.blanks++;
      return;
    }
    if (cell.kind === "event") {
      out.code[i] = EVENT;
      out.events++;
      out.value[i] = this.wordId(text.trim());
      return;
    }
    if (cell.status !== "good") {
      out.status ??= new Uint8Array(out.code.length);
      out.status[i] = cell.status === "bad" ? STATUS_BAD : STATUS_FLAGGED;
    }
    if (cell.kind === "number") {
      out.code[i] = NUMBER;
      out.value[i] = cell.value;
      out.numbers++;
      if (cell.unitText !== null) {
        out.units.set(cell.unitText, (out.units.get(cell.unitText) ?? 0) + 1);
        out.unitAt.set(i, cell.unitText);
      }
      return;
    }
    out.value[i] = this.wordId(cell.word);
    if (cell.kind === "failure") {
      out.code[i] = FAILURE;
      out.failureCount++;
    } else {
      out.code[i] = WORD;
      out.wordCount++;
    }
  }
}
