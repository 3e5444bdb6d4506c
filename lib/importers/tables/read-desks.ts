import { codeFinder, looseCode } from "./known-codes";
import { openTable } from "./read-table";
import { rowCells } from "./row-cells";
import type { RowFate, TableRead } from "./table-read";

export type DeskRow = { code: string; zoneCode: string; note: string };

/** Desks of a CSV file. `zoneCodes` are the zones of the building. */
export function readDesksTable(
  file: { bytes: Uint8Array },
  building: { zoneCodes: readonly string[] },
): TableRead<DeskRow> {
  const table = openTable(file, "desks");
  if (table.status !== "ok") return table;
  const findZone = codeFinder("zone", building.zoneCodes);
  const rows: { line: number; row: DeskRow }[] = [];
  const fates: RowFate[] = table.fates;
  const firstLines = new Map<string, number>();
  for (const record of table.records) {
    const cells = rowCells(table, record);
    const code = cells.text("code", 40);
    const zoneText = cells.text("zoneCode", 40);
    const note = cells.text("note", 200);
    const first = firstLines.get(looseCode(code));
    if (code === "") cells.fault("code-blank", "the desk has no code");
    else if (first !== undefined) cells.fault("duplicate", `desk ${code} already stands in line ${first}`);
    else firstLines.set(looseCode(code), cells.line);
    if (zoneText === "") cells.fault("zone-blank", "the row does not say in which zone the desk stands");
    const zoneCode = zoneText === "" ? null : findZone(zoneText, cells);
    fates.push(cells.fate());
    if (!cells.hasFaults() && zoneCode !== null) rows.push({ line: cells.line, row: { code, zoneCode, note } });
  }
  fates.sort((a, b) => a.line - b.line);
  return { status: "ok", rows, fates, findings: table.findings, fields: [...table.columns.keys()] };
}
