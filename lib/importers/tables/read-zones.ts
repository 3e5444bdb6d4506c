import { codeBehindDate, looseCode } from "./known-codes";
import { openTable } from "./read-table";
import { rowCells } from "./row-cells";
import type { RowFate, TableRead } from "./table-read";

/** A zone as a row of a file, in SI; null where the cell is blank. */
export type ZoneRow = {
  code: string;
  name: string;
  floor: string;
  floorAreaM2: number | null;
  airHandler: string;
  designAirflowM3ps: number | null;
  minimumAirflowM3ps: number | null;
};

/** Sanity limits: common practice, no source. They catch a wrong unit, not a wrong value. */
const AREA_M2 = { low: 0, high: 50_000, aboveLow: true, unit: "m2" };
const DESIGN_M3PS = { low: 0, high: 50, aboveLow: true, unit: "m3/s" };
const MINIMUM_M3PS = { low: 0, high: 50, unit: "m3/s" };

/** Zones of a CSV file. */
export function readZonesTable(file: { bytes: Uint8Array }): TableRead<ZoneRow> {
  const table = openTable(file, "zones");
  if (table.status !== "ok") return table;
  const rows: { line: number; row: ZoneRow }[] = [];
  const fates: RowFate[] = table.fates;
  const firstLines = new Map<string, number>();
  for (const record of table.records) {
    const cells = rowCells(table, record);
    const row: ZoneRow = {
      code: cells.text("code", 40),
      name: cells.text("name", 120),
      floor: cells.text("floor", 40),
      floorAreaM2: cells.number("floorAreaM2", AREA_M2),
      airHandler: cells.text("airHandler", 40),
      designAirflowM3ps: cells.number("designAirflowM3ps", DESIGN_M3PS),
      minimumAirflowM3ps: cells.number("minimumAirflowM3ps", MINIMUM_M3PS),
    };
    const meant = codeBehindDate(row.code);
    const first = firstLines.get(looseCode(row.code));
    if (row.code === "") cells.fault("code-blank", "the zone has no code");
    else if (meant) {
      cells.fault(
        "code-became-date",
        `zone ${row.code} looks like a date that a spreadsheet made of ${meant}; format the column as text and write the code again`,
      );
    } else if (first !== undefined) cells.fault("duplicate", `zone ${row.code} already stands in line ${first}`);
    const { designAirflowM3ps: design, minimumAirflowM3ps: minimum } = row;
    if (design !== null && minimum !== null && minimum > design) {
      cells.fault("minimum-above-design", "the minimum airflow is above the design airflow");
    }
    if (row.code !== "" && first === undefined) firstLines.set(looseCode(row.code), cells.line);
    fates.push(cells.fate());
    if (!cells.hasFaults()) rows.push({ line: cells.line, row });
  }
  fates.sort((a, b) => a.line - b.line);
  return { status: "ok", rows, fates, findings: table.findings, fields: [...table.columns.keys()] };
}
