import type { Rows } from "./rows";
import { NO_ROWS, type RowAccounting, type RowFate, type RowNote, type TrendFindingCode } from "./trend-file";

export const KEPT = 1;
/** A cell of the row was left out: bad status, sentinel, implausible or unreadable. */
export const CELL_LEFT_OUT = 2;
export const CELL_MISSING = 4;
export const HELD_BACK = 8;
export const HOUR_RESOLVED = 16;
export const UNREAD = 32;
export const IGNORED = 64;
export const SAME_AS_EARLIER = 128;
export const REPLACED = 256;

/** What leaves a row that is kept something other than it was. */
const MENDED = CELL_LEFT_OUT | HOUR_RESOLVED | UNREAD | HELD_BACK | REPLACED;

/** Rows of each reason that are kept with their text. */
const MOST_NOTES = 100;

/** Rows that were not plainly accepted, the first of each reason, with how many of each were kept. */
export type RowNotes = { notes: RowNote[]; byCode: Map<string, number> };

const FATE_KEY = {
  accepted: "accepted",
  repaired: "repaired",
  "held-back": "heldBack",
  rejected: "rejected",
  ignored: "ignored",
} as const satisfies Record<RowFate, keyof RowAccounting>;

export const addAccounts = (a: RowAccounting, b: RowAccounting): RowAccounting => ({
  rowsInFile: a.rowsInFile + b.rowsInFile,
  accepted: a.accepted + b.accepted,
  repaired: a.repaired + b.repaired,
  heldBack: a.heldBack + b.heldBack,
  rejected: a.rejected + b.rejected,
  ignored: a.ignored + b.ignored,
});

/** What became of every row of a file, or of a part of it. */
export class RowFates {
  private readonly flags: Uint16Array;
  private readonly codes = new Map<number, TrendFindingCode>();

  constructor(private readonly rows: Rows) {
    this.flags = new Uint16Array(rows.count);
  }

  mark(row: number, flag: number, code?: TrendFindingCode): void {
    this.flags[row] = (this.flags[row] as number) | flag;
    if (code && !this.codes.has(row)) this.codes.set(row, code);
  }

  has(row: number, flag: number): boolean {
    return ((this.flags[row] as number) & flag) !== 0;
  }

  /** Fates of the rows from `from` on, with the first hundred rows of each reason; wholly empty lines are no rows. */
  account(from: number, delimiter: string, noted: RowNotes): RowAccounting {
    const account: RowAccounting = { ...NO_ROWS };
    for (let row = from; row < this.rows.count; row++) {
      if (this.rows.isEmptyLine(row)) continue;
      account.rowsInFile++;
      const fate = this.fateOf(row);
      account[FATE_KEY[fate]]++;
      if (fate !== "accepted") this.note(row, fate, delimiter, noted);
    }
    return account;
  }

  private note(row: number, fate: RowNote["fate"], delimiter: string, { notes, byCode }: RowNotes): void {
    const code = this.codes.get(row);
    const count = byCode.get(code ?? "") ?? 0;
    if (!code || count >= MOST_NOTES) return;
    byCode.set(code, count + 1);
    const line = this.rows.lines[row] as number;
    notes.push({ line, fate, code, excerpt: this.rows.cellsOf(row).join(delimiter).slice(0, 120) });
  }

  private fateOf(row: number): "accepted" | RowNote["fate"] {
    const flags = this.flags[row] as number;
    if ((flags & KEPT) !== 0) return (flags & MENDED) !== 0 ? "repaired" : "accepted";
    if ((flags & HELD_BACK) !== 0) return "held-back";
    if ((flags & UNREAD) !== 0) return "rejected";
    if ((flags & (IGNORED | SAME_AS_EARLIER)) !== 0) return "ignored";
    if ((flags & (REPLACED | CELL_LEFT_OUT)) !== 0) return "rejected";
    return "ignored";
  }
}
