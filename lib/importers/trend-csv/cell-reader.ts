import { type Cell, readCell } from "./cell";
import { type DecimalMark, plainNumber } from "./number-format";

export const NOTHING = 0;
export const NUMBER = 1;
export const MISSING = 2;
export const EVENT = 3;
/** A word such as "Fault": missing among numbers, a state among words. `value` is its number in the word table. */
export const FAILURE = 4;
export const WORD = 5;
export const STATUS_GOOD = 0;
export const STATUS_FLAGGED = 1;
export const STATUS_BAD = 2;

/** Cells of one column (or of one point of a long table) as numbers and codes, in step with the rows asked for. */
export type ReadCells = {
  code: Uint8Array;
  value: Float64Array;
  /** Status written in the cell itself. */
  status: Uint8Array;
  blanks: number;
  numbers: number;
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

  read(cells: readonly string[][], rows: Int32Array, column: number): ReadCells {
    const n = rows.length;
    const out: ReadCells = {
      code: new Uint8Array(n),
      value: new Float64Array(n),
      status: new Uint8Array(n),
      blanks: 0,
      numbers: 0,
      wordCount: 0,
      failureCount: 0,
      units: new Map(),
      unitAt: new Map(),
    };
    for (let i = 0; i < n; i++) {
      const text = (cells[rows[i] as number] as string[])[column] ?? "";
      if (text === "") {
        out.code[i] = MISSING;
        out.blanks++;
        continue;
      }
      const number = plainNumber(text, this.mark);
      if (!Number.isNaN(number)) {
        out.code[i] = NUMBER;
        out.value[i] = number;
        out.numbers++;
        continue;
      }
      this.readDressed(text, i, out);
    }
    return out;
  }

  private readDressed(text: string, i: number, out: ReadCells): void {
    let cell = this.seen.get(text);
    if (!cell) {
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
      out.value[i] = this.wordId(text.trim());
      return;
    }
    if (cell.status !== "good") out.status[i] = cell.status === "bad" ? STATUS_BAD : STATUS_FLAGGED;
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
