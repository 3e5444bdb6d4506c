import { describe, expect, it } from "vitest";
import { readZonesTable, type ZoneRow } from "@/lib/importers/tables/read-zones";
import { tableFindingText } from "@/lib/importers/tables/table-read";
import { acceptedTable, fatesOf, refusedTable, textBytes } from "./table-support";

const read = (text: string) => readZonesTable({ bytes: textBytes(text) });
const zones = (text: string): ZoneRow[] => acceptedTable(read(text)).rows.map(({ row }) => row);

describe("units in the heading", () => {
  it("convert area and airflow to SI", () => {
    // 1 ft = 0.3048 m exactly: 100 ft2 = 9.290304 m2, 1000 cfm = 0.4719474432 m3/s.
    const [zone] = zones("zone,area (ft2),design airflow [cfm],min_airflow_m3/h\n2-14,100,1000,360\n");
    expect(zone?.floorAreaM2).toBeCloseTo(9.290304, 9);
    expect(zone?.designAirflowM3ps).toBeCloseTo(0.4719474432, 10);
    expect(zone?.minimumAirflowM3ps).toBeCloseTo(0.1, 12);
    const [metric] = zones(
      "Zone Code;Floor area (m²);Maximum airflow L/s;Minimum airflow (m³/s)\n2-14;120,5;420;0,13\n",
    );
    expect(metric).toMatchObject({ floorAreaM2: 120.5, designAirflowM3ps: 0.42, minimumAirflowM3ps: 0.13 });
  });

  it("are asked for when a column with values has none, and not when the column is empty", () => {
    const refusal = refusedTable(read("zone,area\n2-14,120\n"));
    expect(refusal.code).toBe("unit-missing");
    expect(refusal.message).toContain('The column "area" does not say its unit');
    expect(zones("zone,area\n2-14,\n")).toHaveLength(1);
  });

  it("are refused when unknown", () => {
    expect(refusedTable(read("zone,area (acres)\n2-14,1\n"))).toMatchObject({ code: "unit-unknown", lines: [1] });
  });
});

describe("the fate of every row", () => {
  it("is told, with the line, whatever stands in the file", () => {
    const text = [
      "zone,name,area_m2,design_airflow_L/s,minimum_airflow_L/s",
      '2-14,"Open office,\nnorth",120,420,130',
      "# a remark",
      ",,,,",
      "2-15,Meeting room,-5,,",
      "2-14 ,Again,100,,",
      "2-16,Corner,30 m2,100,120",
      '2-17,Store,"1,200",100,120',
      '2-18,Lobby,"1,200",,',
      ",Nameless,10,,",
      "2-19,Split,by,a,comma,here",
      "",
      "",
    ].join("\n");
    const table = acceptedTable(read(text));
    expect(fatesOf(table)).toEqual([
      [2, "accepted", ""],
      [4, "ignored", "comment"],
      [5, "ignored", "blank-row"],
      [6, "rejected", "outside-limits"],
      [7, "rejected", "duplicate"],
      [8, "rejected", "not-a-number"],
      [9, "rejected", "minimum-above-design"],
      [10, "repaired", "number-spelling"],
      [11, "rejected", "code-blank"],
      [12, "rejected", "extra-cells"],
    ]);
    expect(table.rows.map(({ line, row }) => [line, row.code, row.name])).toEqual([
      [2, "2-14", "Open office, north"],
      [10, "2-18", "Lobby"],
    ]);
    const messages = table.fates.flatMap((fate) => (fate.fate === "accepted" ? [] : [fate.message]));
    expect(messages).toContain("Line 7: zone 2-14 already stands in line 2.");
    expect(messages).toContain('Line 10: area_m2: "1,200" read as 1200.');
    expect(messages).toContain("Line 6: area_m2 is -5; possible is above 0 to 50000 m2.");
  });

  it("names several faults of one row together", () => {
    const [fate] = acceptedTable(read("zone,area_m2\n,none\n2-1,5")).fates;
    expect(fate).toMatchObject({ fate: "rejected" });
    expect(fate && "message" in fate && fate.message).toMatch(
      /^Line 2: .*"none" is not a number.*; the zone has no code\.$/,
    );
  });

  it("tells a code that a spreadsheet turned into a date", () => {
    const [fate] = acceptedTable(read("zone\n14-Feb\n2-15\n")).fates;
    expect(fate).toMatchObject({ fate: "rejected", code: "code-became-date" });
    expect(fate && "message" in fate && fate.message).toContain("made of 2-14");
  });
});

describe("text", () => {
  it("is read with a byte order mark, in UTF-16, with tabs, and after a title", () => {
    expect(zones("\uFEFFzone,name\n2-14,Küche\n")[0]?.name).toBe("Küche");
    const utf16 = new Uint8Array(Buffer.from("\uFEFFzone\tname\r\n2-14\tKüche\r\n", "utf16le"));
    expect(acceptedTable(readZonesTable({ bytes: utf16 })).rows[0]?.row.name).toBe("Küche");
    const titled = acceptedTable(read("Zones of the building\n\nzone,name\n2-14,Kitchen\n"));
    expect(fatesOf(titled)).toEqual([
      [1, "ignored", "before-heading"],
      [2, "ignored", "blank-row"],
      [4, "accepted", ""],
    ]);
  });

  it("in windows-1252 is read, with a finding", () => {
    const table = acceptedTable(
      readZonesTable({ bytes: new Uint8Array(Buffer.from("zone;name\n2-14;Küche\n", "latin1")) }),
    );
    expect(table.rows[0]?.row.name).toBe("Küche");
    expect(table.findings.map((finding) => finding.code)).toEqual(["read-as-windows-1252"]);
  });

  it("with old line ends counts lines rightly", () => {
    expect(fatesOf(acceptedTable(read("zone\r2-14\r\r2-15\r")))).toEqual([
      [2, "accepted", ""],
      [3, "ignored", "blank-row"],
      [4, "accepted", ""],
    ]);
  });

  it("between semicolons keeps an ambiguous comma for the person to settle", () => {
    const [fate] = acceptedTable(read("zone;area_m2\n2-14;1,200\n")).fates;
    expect(fate && "message" in fate && fate.message).toContain("write 1200 or 1.200");
  });

  it("names the fields that the file has columns for, so that others can be left as they are", () => {
    expect(acceptedTable(read("zone,area_m2\n2-14,120\n")).fields).toEqual(["code", "floorAreaM2"]);
    expect(acceptedTable(read("zone,area\n2-14,\n")).fields).toEqual(["code"]);
  });

  it("in columns without a place is reported", () => {
    const [finding] = acceptedTable(read("zone,owner,shade\n2-14,A,B\n")).findings;
    expect(finding && tableFindingText(finding)).toBe("Columns that have no place here were left out: owner, shade.");
  });
});

describe("a wrong file", () => {
  it.each([
    [
      "a trend log by its heading",
      "Timestamp,2-14 zone air,2-14 setpoint\n2024-07-01 00:00,22,23\n",
      "looks-like-trends",
    ],
    ["a trend log by its rows", "x,zone,y\n7/1/2024 00:15,22.1,23\n", "looks-like-trends"],
    ["a weather file", "LOCATION,Elm Field,XX\n", "looks-like-weather"],
    ["a list of desks", "desk,zone\n2-14-01,2-14\n", "wrong-table"],
    ["a list of devices", "device,class,zone,setting,basis\nH-1,x,2-14,off,default\n", "wrong-table"],
    ["a file without its column", "name,floor\nNorth,2\n", "column-missing"],
    ["two columns of one meaning", "zone,zone code\n1,2\n", "column-twice"],
    ["an open quotation mark", 'zone,name\n2-14,"North\n2-15,South\n', "quote-not-closed"],
    ["nothing", "\n\n", "empty-file"],
    ["a heading alone", "zone,name\n", "no-rows"],
  ])("is refused: %s", (_, text, code) => {
    expect(refusedTable(read(text)).code).toBe(code);
  });

  it("is told which column is missing and which were found", () => {
    expect(refusedTable(read("name,floor\nNorth,2\n")).message).toBe(
      'A zones table needs the column "zone". Columns found in line 1: name, floor.',
    );
  });

  it("that is a workbook is told to be saved as CSV", () => {
    const refusal = refusedTable(readZonesTable({ bytes: Uint8Array.of(0x50, 0x4b, 0x03, 0x04, 0x14) }));
    expect(refusal).toMatchObject({ code: "not-text" });
    expect(refusal.message).toContain("save the sheet as CSV");
  });
});
