import { isEventText, isSummaryText } from "./cell-words";
import type { FileContext } from "./file-context";
import { type Clock, dateColumnOf, isUnread } from "./read-table";
import { IGNORED, UNREAD } from "./row-fates";
import { isBlankRow } from "./sections";
import { BLANK, READ } from "./stamp-column";

/**
 * Settles the rows without a readable stamp: totals and end marks below the readings, lines between stacked tables,
 * events of the log, and rows that are rejected because they cannot be read.
 */
export function settleOddRows(context: FileContext): void {
  const { rows, skeleton, fates, lists } = context;
  const clock = skeleton.clocks[0] as Clock;
  const column = dateColumnOf(clock.source);
  const isPairs = skeleton.clocks.length > 1;
  skeleton.sections.forEach((section, index) => {
    let last = section.dataTo - 1;
    while (last >= section.dataFrom && !skeleton.clocks.some(({ stamps }) => stamps.status[last] === READ)) last--;
    const below =
      context.isLast && index === skeleton.sections.length - 1
        ? rowsBelow(last + 1, section.dataTo)
        : new Set<number>();
    for (let row = section.dataFrom; row < section.dataTo; row++) {
      if (skeleton.clocks.some(({ stamps }) => stamps.status[row] === READ) || fates.has(row, UNREAD)) continue;
      const cells = rows.cellsOf(row);
      const text = (cells[column] ?? "").trim();
      if (below.has(row)) {
        fates.mark(row, IGNORED, "trailing-rows-ignored");
        lists.trailing.add(rows.lines[row] as number);
      } else if (isBlankRow(cells)) {
        fates.mark(row, IGNORED);
      } else if (cells.some(isEventText)) {
        fates.mark(row, IGNORED, "event-row");
        lists.event.add(rows.lines[row] as number);
      } else if (isUnread(clock.stamps.status[row]) && !/^\d/.test(text) && isSummaryText(text)) {
        fates.mark(row, IGNORED, "trailing-rows-ignored");
        lists.trailing.add(rows.lines[row] as number);
      } else if (!isPairs || clock.stamps.status[row] !== BLANK || cells.some((cell) => cell.trim() !== "")) {
        fates.mark(row, UNREAD, "row-unreadable");
        lists.unreadable.add(rows.lines[row] as number);
      }
    }
  });

  /** Rows after the last reading that hold text, blanks or totals, but nothing that begins like a date. */
  function rowsBelow(from: number, to: number): Set<number> {
    const found: number[] = [];
    let filled = false;
    for (let row = from; row < to; row++) {
      const cells = rows.cellsOf(row);
      const text = (cells[column] ?? "").trim();
      const isEmptyLine = cells.length === 1 && text === "";
      if (/^\d{1,4}[-/.:]/.test(text) || rows.malformed.has(row)) continue;
      if (!isEmptyLine) filled = true;
      found.push(row);
    }
    return new Set(filled && !onlyBlank(found) ? found : []);
  }

  function onlyBlank(list: readonly number[]): boolean {
    return list.every((row) => isBlankRow(rows.cellsOf(row)));
  }
}
