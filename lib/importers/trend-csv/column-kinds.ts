import { plainHeading } from "./heading-words";
import { statusMeaning } from "./status-words";

/** Quality words, or a few whole numbers under a heading that says so; On and Off under "Status" are a point. */
export function isStatusColumn(text: string, cells: readonly string[]): boolean {
  const filled = [...new Set(cells.map((cell) => cell.trim()).filter((cell) => cell !== ""))];
  if (filled.length === 0) return true;
  if (filled.every((cell) => /^-?\d+$/.test(cell)))
    return filled.length <= 12 && !/^(?:state|status)$/.test(plainHeading(text));
  return filled.filter((cell) => /^\{.*\}$/.test(cell) || statusMeaning(cell) !== null).length * 2 > filled.length;
}

export const isWholeNumbers = (cells: readonly string[]): boolean =>
  cells.every((cell) => cell.trim() === "" || /^\s*\d+\s*$/.test(cell)) && cells.some((cell) => cell.trim() !== "");

/** Ten- or thirteen-digit instants that stand beside the stamps: another way of writing the time, not a point. */
export function isEpochColumn(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== "");
  return (
    filled.length > 1 &&
    new Set(filled).size > filled.length / 2 &&
    filled.every((cell) => /^\s*1\d{9}(?:\d{3}|\.\d+)?\s*$/.test(cell))
  );
}
