import type { Cell as WorkbookCell, WriteSheet } from "hucre/xlsx";

/** A cell of a workbook: a value, or a formula with the value that it has now. */
export type LiveCell =
  | string
  | number
  | null
  | { formula: string; value: number | string; format?: string }
  | { value: string | number; format?: string; strong?: boolean };

export const MONEY = "#,##0.00";

/** A sheet whose formulas are live; texts are texts, also those that begin with an equals sign. */
export function liveSheet(name: string, rows: readonly (readonly LiveCell[])[], widths: readonly number[]): WriteSheet {
  const cells = new Map<string, Partial<WorkbookCell>>();
  const values = rows.map((row, at) =>
    row.map((cell, column) => {
      if (cell === null || typeof cell !== "object") return cell;
      const style = {
        ...(cell.format ? { numFmt: cell.format } : {}),
        ...("strong" in cell && cell.strong ? { font: { bold: true } } : {}),
      };
      cells.set(
        `${at},${column}`,
        "formula" in cell
          ? { formula: cell.formula, formulaResult: cell.value, style }
          : { value: cell.value, type: typeof cell.value === "number" ? "number" : "string", style },
      );
      return cell.value;
    }),
  );
  return { name, rows: values, cells, columns: widths.map((width) => ({ width })) };
}

/** Bold words. */
export const strong = (value: string): LiveCell => ({ value, strong: true });

/** `A1` of a row and a column, both from 0. */
export const cellName = (row: number, column: number): string => `${String.fromCharCode(65 + column)}${row + 1}`;
