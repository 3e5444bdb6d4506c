import type { Rows } from "./rows";
import type { RowAccounting, RowNote, TrendFindingCode } from "./trend-file";

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

/** What became of every row of a file. */
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

  /** Fates of the rows from `from` on; wholly empty lines are no rows. */
  account(from: number, delimiter: string): { rows: RowAccounting; notes: RowNote[] } {
    const account: RowAccounting = { rowsInFile: 0, accepted: 0, repaired: 0, heldBack: 0, rejected: 0, ignored: 0 };
    const notes: RowNote[] = [];
    const noted = new Map<string, number>();
    for (let row = from; row < this.flags.length; row++) {
      if (this.rows.isEmptyLine(row)) continue;
      account.rowsInFile++;
      const fate = this.fateOf(row);
      if (fate === "accepted") account.accepted++;
      else {
        if (fate === "repaired") account.repaired++;
        else if (fate === "held-back") account.heldBack++;
        else if (fate === "rejected") account.rejected++;
        else account.ignored++;
        const code = this.codes.get(row);
        const count = noted.get(code ?? "") ?? 0;
        if (code && count < 100) {
          noted.set(code, count + 1);
          notes.push({
            line: this.rows.lines[row] as number,
            fate,
            code,
            excerpt: this.rows.cellsOf(row).join(delimiter).slice(0, 120),
          });
        }
      }
    }
    return { rows: account, notes };
  }

  private fateOf(row: number): "accepted" | RowNote["fate"] {
    const flags = this.flags[row] as number;
    const any = (mask: number): boolean => (flags & mask) !== 0;
    if (any(KEPT)) return any(CELL_LEFT_OUT | HOUR_RESOLVED | UNREAD | HELD_BACK | REPLACED) ? "repaired" : "accepted";
    if (any(HELD_BACK)) return "held-back";
    if (any(UNREAD)) return "rejected";
    if (any(IGNORED | SAME_AS_EARLIER)) return "ignored";
    if (any(REPLACED | CELL_LEFT_OUT)) return "rejected";
    return "ignored";
  }
}
