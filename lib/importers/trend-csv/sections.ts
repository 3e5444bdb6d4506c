import { isTimeHeading } from "./heading-words";
import type { Rows } from "./rows";
import { FOREIGN_ZONE, READ, UNREADABLE } from "./stamp-column";
import { readUnit } from "./units";

/** One table of a file. Row numbers are indices; `dataTo` is the first row that no longer belongs to it; -1: there is none. */
export type Section = {
  metaFrom: number;
  headerRow: number;
  unitsRow: number;
  dataFrom: number;
  dataTo: number;
};

export const isBlankRow = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/**
 * Finds the tables: the heading is the last row of names before the first row whose stamp can be read (with perhaps a
 * row of units between); a later row with a heading of time where a stamp should be begins another table. Rows that
 * go on with a table of an earlier part of the file need no heading.
 */
export function findSections(
  rows: Rows,
  stampStatus: Uint8Array,
  stampColumn: number,
  { isContinued }: { isContinued: boolean },
): Section[] {
  const n = rows.count;
  const isData = (row: number): boolean =>
    (stampStatus[row] === READ || stampStatus[row] === FOREIGN_ZONE) && rows.width(row) > 1;
  let first = 0;
  while (first < n && !isData(first) && !isContinued) first++;
  if (first === n) return [];

  const sections: Section[] = [];
  const open = isContinued ? { headerRow: -1, unitsRow: -1 } : headingAbove(rows, first, 0, stampColumn);
  sections.push({ metaFrom: 0, ...open, dataFrom: first, dataTo: n });
  let lastData = isContinued ? -1 : first;
  for (let row = isContinued ? first : first + 1; row < n; row++) {
    if (isData(row)) {
      lastData = row;
      continue;
    }
    if (stampStatus[row] !== UNREADABLE) continue;
    const text = rows.cell(row, stampColumn);
    if (rows.width(row) < 2 || text.length > 40 || /\d/.test(text) || !isTimeHeading(text)) continue;
    let next = row + 1;
    while (next < n && !isData(next) && !isHeadingRow(rows, next, stampColumn, stampStatus)) next++;
    const hasData = next < n && isData(next);
    let metaFrom = row;
    while (metaFrom - 1 > lastData && isMetaRow(rows.cellsOf(metaFrom - 1), stampColumn)) metaFrom--;
    (sections[sections.length - 1] as Section).dataTo = metaFrom;
    const unitsRow = row + 1 < n && isUnitsRow(rows.cellsOf(row + 1), stampColumn) ? row + 1 : -1;
    const dataFrom = hasData ? next : unitsRow >= 0 ? unitsRow + 1 : row + 1;
    sections.push({ metaFrom, headerRow: row, unitsRow, dataFrom, dataTo: n });
    lastData = Math.max(row, dataFrom - 1);
    row = lastData;
  }
  return sections;
}

function isHeadingRow(rows: Rows, row: number, stampColumn: number, stampStatus: Uint8Array): boolean {
  const text = rows.cell(row, stampColumn);
  return stampStatus[row] === UNREADABLE && text.length <= 40 && !/\d/.test(text) && isTimeHeading(text);
}

/** Blank, or text such as `Point,Zone 4`: never a row whose first field begins like a date. */
const isMetaRow = (cells: readonly string[], stampColumn: number): boolean =>
  isBlankRow(cells) || !/^\s*\d/.test(cells[stampColumn] ?? "") || cells.length === 1;

function headingAbove(
  rows: Rows,
  first: number,
  from: number,
  stampColumn: number,
): { headerRow: number; unitsRow: number } {
  const skipBlank = (row: number): number => {
    let at = row;
    while (at >= from && isBlankRow(rows.cellsOf(at))) at--;
    return at;
  };
  let at = skipBlank(first - 1);
  let unitsRow = -1;
  if (at > from && isUnitsRow(rows.cellsOf(at), stampColumn)) {
    unitsRow = at;
    at = skipBlank(at - 1);
  }
  // A row that could not be read may stand first; names hold letters.
  while (at >= from && !isNameRow(rows.cellsOf(at))) at--;
  return at >= from ? { headerRow: at, unitsRow } : { headerRow: -1, unitsRow: -1 };
}

const isNameRow = (cells: readonly string[]): boolean =>
  cells.filter((cell) => cell.trim() !== "").length >= 2 &&
  cells.some((cell) => /\p{L}/u.test(cell)) &&
  !cells.some(looksLikeReading);

const looksLikeReading = (cell: string): boolean => /^\s*-?\d+[.,]\d+\s*$/.test(cell);

/** A row of units under the names: no stamp, at least one unit, nothing that is no unit. */
export function isUnitsRow(cells: readonly string[], stampColumn: number): boolean {
  const stamp = (cells[stampColumn] ?? "").trim();
  if (stamp !== "" && !/^(?:units?|einheit|-+)$/i.test(stamp)) return false;
  let units = 0;
  for (let column = 0; column < cells.length; column++) {
    const text = (cells[column] as string).trim();
    if (column === stampColumn || text === "" || /^-+$/.test(text)) continue;
    const bare = /^[([{](.*)[)\]}]$/.exec(text)?.[1] ?? text;
    if (/^\d/.test(bare)) return false;
    if (readUnit(bare)) units++;
    else if (bare.length > 12) return false;
  }
  return units > 0;
}
