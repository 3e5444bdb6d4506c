import { cellNumber } from "./cell-number";
import type { OpenedTable } from "./read-table";
import type { TableRecord } from "./split-table";
import type { RowFate } from "./table-read";

type Remark = { code: string; text: string };

export type NumberLimits = {
  low: number;
  high: number;
  /** The low limit itself is not allowed. */
  aboveLow?: boolean;
  unit: string;
  /** A cell such as `60 %` is read as 0.6. */
  percentAllowed?: boolean;
};

/** Reads the cells of one row by column and gathers what was repaired and what is wrong. */
export type RowCells = {
  line: number;
  text(key: string, longest: number): string;
  /** In the stored unit, or null when the cell is blank. */
  number(key: string, limits: NumberLimits): number | null;
  repair(code: string, text: string): void;
  fault(code: string, text: string): void;
  hasFaults(): boolean;
  /** Sentence of the row as a whole. */
  fate(): RowFate;
};

export function rowCells(table: OpenedTable, record: TableRecord): RowCells {
  const { line, cells } = record;
  const repairs: Remark[] = [];
  const faults: Remark[] = [];
  const cellOf = (key: string): string => cells[table.columns.get(key)?.at ?? -1] ?? "";
  const headingOf = (key: string): string => table.columns.get(key)?.heading ?? key;
  return {
    line,
    text(key, longest) {
      const text = cellOf(key).replace(/\s+/g, " ");
      if (text.length > longest) {
        faults.push({
          code: "too-long",
          text: `${headingOf(key)} has ${text.length} characters; at most ${longest} fit`,
        });
      }
      return text;
    },
    number(key, limits) {
      const text = cellOf(key);
      const percent = limits.percentAllowed && text.endsWith("%");
      const read = cellNumber(percent ? text.slice(0, -1).trim() : text, table.decimalComma);
      if (read.status === "blank") return null;
      if (read.status === "wrong") {
        faults.push({ code: "not-a-number", text: `${headingOf(key)}: ${read.why}` });
        return null;
      }
      if (read.repair) repairs.push({ code: "number-spelling", text: `${headingOf(key)}: ${read.repair}` });
      const value = percent ? read.value / 100 : read.value * (table.columns.get(key)?.factor ?? 1);
      if (percent) repairs.push({ code: "percent", text: `${headingOf(key)}: "${text}" read as ${value}` });
      if (isOutside(value, limits)) {
        const from = limits.aboveLow ? `above ${limits.low}` : `${limits.low}`;
        const range = `${from} to ${limits.high} ${limits.unit}`.trim();
        faults.push({ code: "outside-limits", text: `${headingOf(key)} is ${cellOf(key)}; possible is ${range}` });
        return null;
      }
      return value;
    },
    repair: (code, text) => void repairs.push({ code, text }),
    fault: (code, text) => void faults.push({ code, text }),
    hasFaults: () => faults.length > 0,
    fate() {
      const [remarks, fate] = faults.length > 0 ? [faults, "rejected" as const] : [repairs, "repaired" as const];
      const [first] = remarks;
      if (!first) return { line, fate: "accepted" };
      const message = `Line ${line}: ${remarks.map((remark) => remark.text).join("; ")}.`;
      return { line, fate, code: first.code, message, excerpt: excerptOf(cells) };
    },
  };
}

const isOutside = (value: number, { low, high, aboveLow }: NumberLimits): boolean =>
  value > high || value < low || (aboveLow === true && value === low);

export const excerptOf = (cells: readonly string[]): string => cells.join(", ").slice(0, 160);
