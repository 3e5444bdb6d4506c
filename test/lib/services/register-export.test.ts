import { readXlsx } from "hucre/xlsx";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import yauzl from "yauzl";
import { registerDevice } from "@/lib/services/devices/register";
import { REGISTER_TABLES, registerCsv, registerWorkbook } from "@/lib/services/exports/register-files";
import { registerTables } from "@/lib/services/exports/register-tables";
import { startWalk } from "@/lib/services/walks/start";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";

function office() {
  const { ctx, buildingId } = smallOffice();
  registerDevice(ctx, buildingId, heaterInput({ note: "=2+3", make: "Acme" }));
  registerDevice(
    ctx,
    buildingId,
    heaterInput({ label: "H-002", settings: [settingInput({ basis: "class-default", currentA: null })] }),
  );
  startWalk(ctx, buildingId);
  return { ctx, buildingId };
}

/** Text of one part of a workbook, by a zip reader that is none of the writer's. */
async function partOf(bytes: Uint8Array, name: string): Promise<string> {
  const zip = await yauzl.fromBufferPromise(Buffer.from(bytes));
  for await (const entry of zip.eachEntry()) {
    if (entry.fileName !== name) continue;
    const chunks: Buffer[] = [];
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer);
    return Buffer.concat(chunks).toString();
  }
  throw new Error(`no ${name} in the workbook`);
}

describe("the register taken away", () => {
  it("has every table with units in its headings and the origin beside each figure", () => {
    const { ctx, buildingId } = office();
    const tables = registerTables(ctx, buildingId);
    expect(tables.map((table) => table.name)).toEqual([...REGISTER_TABLES]);
    for (const { name, columns, rows } of tables)
      for (const row of rows) expect(row, name).toHaveLength(columns.length);
    const settings = tables.find((table) => table.name === "settings");
    const cell = (row: number, column: string) => settings?.rows[row]?.[settings.columns.indexOf(column)];
    // 11.44 A at 120 V are 1372.8 W, by hand; 400 h of it 549.12 kWh.
    expect([cell(0, "power (W)"), cell(0, "origin of power"), cell(0, "energy (kWh/year)")]).toEqual([
      expect.closeTo(1372.8, 6),
      "clamp",
      expect.closeTo(549.12, 6),
    ]);
    expect([cell(1, "origin of power"), cell(1, "current (A)"), cell(1, "origin of hours")]).toEqual([
      "class-default",
      null,
      "As entered",
    ]);
  });

  it("as CSV disarms formulas and keeps blanks blank", () => {
    const { ctx, buildingId } = office();
    const { fileName, text } = registerCsv(ctx, buildingId, "devices");
    expect(fileName).toBe("devices.csv");
    const { data } = Papa.parse<Record<string, string>>(text.trim(), { header: true });
    expect(data.map((row) => [row.label, row.make, row.note, row["nameplate power (W)"]])).toEqual([
      ["H-001", "Acme", "'=2+3", ""],
      ["H-002", "", "", ""],
    ]);
    expect(() => registerCsv(ctx, buildingId, "secrets")).toThrow("no table");
  });

  it("as a workbook holds the same cells, numbers as numbers and texts as texts", async () => {
    const { ctx, buildingId } = office();
    const { bytes } = await registerWorkbook(ctx, buildingId);
    const { sheets } = await readXlsx(bytes);
    expect(sheets.map((sheet) => sheet.name)).toEqual([...REGISTER_TABLES]);
    for (const [at, table] of registerTables(ctx, buildingId).entries()) {
      const [columns, ...rows] = sheets[at]?.rows ?? [];
      expect(columns).toEqual(table.columns);
      expect(rows.map((row) => table.columns.map((_, column) => row[column] || null))).toEqual(
        table.rows.map((row) => row.map((cell) => cell || null)),
      );
    }
    // What stands in the file itself: the power is a number, and the note no formula.
    expect(await partOf(bytes, "xl/worksheets/sheet2.xml")).toMatch(/<c r="C2"[^>]*><v>1372\.8/);
    expect(await partOf(bytes, "xl/worksheets/sheet1.xml")).not.toContain("<f>");
    expect(await partOf(bytes, "xl/sharedStrings.xml")).toContain("=2+3");
  });

  it("is closed to whoever is not signed in", () => {
    const { ctx, buildingId } = office();
    expect(() => registerCsv({ ...ctx, actor: { kind: "anonymous" } }, buildingId, "devices")).toThrow("Sign in");
  });
});
