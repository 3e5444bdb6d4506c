import { writeXlsx } from "hucre/xlsx";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { csvText } from "./csv";
import type { ExportedFile } from "./export-building";
import type { RegisterTable } from "./register-table";
import { registerTables } from "./register-tables";

/** Tables of the register that can be taken away as CSV, by the name of their file. */
export const REGISTER_TABLES = [
  "devices",
  "settings",
  "circuits",
  "steps",
  "inspections",
  "plug logs",
  "photos",
  "walks",
] as const;

/** One table of the register as CSV. */
export function registerCsv(ctx: Context, buildingId: number, name: string): { fileName: string; text: string } {
  const table = registerTables(ctx, buildingId).find((each) => each.name === name);
  if (!table) throw new ServiceError("not-found", `The register has no table ${name}.`);
  return { fileName: `${name.replaceAll(" ", "-")}.csv`, text: csvText(table.columns, table.rows) };
}

/** Every table of the register as CSV. */
export const registerCsvFiles = (ctx: Context, buildingId: number): ExportedFile[] =>
  registerTables(ctx, buildingId).map(({ name, columns, rows }) => ({
    fileName: `register-${name.replaceAll(" ", "-")}.csv`,
    text: csvText(columns, rows),
  }));

/** The whole register as an XLSX workbook, a sheet a table. */
export async function registerWorkbook(
  ctx: Context,
  buildingId: number,
): Promise<{ fileName: string; bytes: Uint8Array }> {
  const tables = registerTables(ctx, buildingId);
  const bytes = await writeXlsx({ sheets: tables.map(sheetOf) });
  return { fileName: "device-register.xlsx", bytes };
}

/** Texts are texts in a workbook, also those that begin with an equals sign: nothing has to be disarmed. */
const sheetOf = ({ name, columns, rows }: RegisterTable) => ({
  name,
  rows: [columns, ...rows],
  freezePane: { rows: 1 },
  autoFilter: { range: `A1:${columnLetters(columns.length - 1)}${rows.length + 1}` },
});

/** 0 is A, 25 Z, 26 AA. */
function columnLetters(at: number): string {
  const rest = Math.floor(at / 26) - 1;
  return (rest >= 0 ? columnLetters(rest) : "") + String.fromCharCode(65 + (at % 26));
}
