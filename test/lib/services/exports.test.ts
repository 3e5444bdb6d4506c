import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { overrideAssumption } from "@/lib/services/assumptions/override";
import { issueComfortLink } from "@/lib/services/comfort-links/manage";
import { fileComfortReport } from "@/lib/services/comfort-reports/file";
import { logComfortReport } from "@/lib/services/comfort-reports/log";
import { addDesk } from "@/lib/services/desks/save";
import { registerDevice } from "@/lib/services/devices/register";
import { csvText } from "@/lib/services/exports/csv";
import { exportBuilding } from "@/lib/services/exports/export-building";
import { importTable } from "@/lib/services/imports/import-table";
import { readCostOfOvercooling } from "@/lib/services/overcooling/assess";
import { addZone } from "@/lib/services/zones/save";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";

const rowsOf = (text: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(text.trimEnd(), { header: true }).data;

async function filesOf({ ctx, buildingId }: ReturnType<typeof smallOffice>) {
  const files = new Map((await exportBuilding(ctx, buildingId)).map(({ fileName, text }) => [fileName, text]));
  return (name: string): string => {
    const text = files.get(name);
    if (text === undefined) throw new Error(`${name} is not among ${[...files.keys()].join(", ")}`);
    return text;
  };
}

describe("an exported building", () => {
  it("holds the register with what is worked out of each setting, exact", async () => {
    const office = smallOffice({ electricityPricePerKwh: 0.13 });
    const settings = [
      settingInput({ powerFactor: 1, hoursPerYear: 2000 }),
      settingInput({ name: "unheard-of", basis: "class-default", currentA: null, hoursPerYear: 0 }),
    ];
    registerDevice(office.ctx, office.buildingId, heaterInput({ settings }));
    const file = await filesOf(office);
    const [figures, unknown] = rowsOf(file("device-figures.csv"));
    // By hand: 11.44 A at 120 V, 2,000 h, 0.13 per kWh.
    expect(Number(figures?.["power value (W)"])).toBeCloseTo(1372.8, 9);
    expect(Number(figures?.["energy value (kWh/year)"])).toBeCloseTo(2745.6, 9);
    expect(Number(figures?.["cost value (USD/year)"])).toBeCloseTo(356.928, 9);
    expect(unknown).toMatchObject({ setting: "unheard-of", "power value (W)": "", "cost value (USD/year)": "" });
  });

  it("holds tables that can be brought in again, and change nothing then", async () => {
    const office = smallOffice();
    registerDevice(office.ctx, office.buildingId, heaterInput({ settings: [settingInput({ voltageMeasured: true })] }));
    const file = await filesOf(office);
    for (const [kind, count] of [
      ["zones", 2],
      ["desks", 2],
      ["devices", 1],
    ] as const) {
      const bytes = new TextEncoder().encode(file(`${kind}.csv`));
      const run = importTable(office.ctx, office.buildingId, kind, { name: `${kind}.csv`, bytes });
      expect([run.samplesAdded, run.samplesChanged, run.samplesSame], kind).toEqual([0, 0, count]);
    }
  });

  it("holds counts of reports by zone for handing on, none of fewer than ten people and none that can be told", async () => {
    const office = smallOffice();
    addZone(office.ctx, office.buildingId, { code: "2-16" });
    const report = (zoneCode: string, desks: number, vote: -2 | 2) => {
      for (let i = 0; i < desks; i++) {
        const deskCode = `${zoneCode}-${vote}${i}`;
        addDesk(office.ctx, office.buildingId, { code: deskCode, zoneCode });
        logComfortReport(office.ctx, office.buildingId, {
          origin: "phone",
          deskCode,
          thermalSensation: vote,
          preference: vote < 0 ? "warmer" : "cooler",
        });
      }
    };
    report("2-14", 12, -2);
    report("2-14", 3, 2);
    report("2-15", 4, -2);
    report("2-16", 20, -2);
    report("2-16", 2, 2);
    const rows = rowsOf((await filesOf(office))("comfort-report-counts.csv"));
    // The 4 people of 2-15 would be told by the total: 2-14 goes with them.
    expect(rows).toEqual([
      { zone: "2-16", "cold reports": "20", "hot reports": "2" },
      { zone: "2 zones together", "cold reports": "16", "hot reports": "3" },
      { zone: "all zones", "cold reports": "36", "hot reports": "5" },
    ]);
  });

  it("holds reports, the building's own assumptions beside the defaults, and the cost with its parts", async () => {
    const office = smallOffice({ presentCoolingSetpointC: 21.5 });
    const { ctx, buildingId, zoneId, deskId } = office;
    const { token } = issueComfortLink(ctx, buildingId, { zoneId, deskId });
    fileComfortReport(ctx, token, { thermalSensation: -2, preference: "warmer", note: '=HYPERLINK("x")' });
    const override = { value: 12.5, low: 12, high: 13, reason: "Read at the air handler" };
    overrideAssumption(ctx, buildingId, "supply-air-temp", override);
    const file = await filesOf(office);
    expect(rowsOf(file("comfort-reports.csv"))).toEqual([
      expect.objectContaining({
        "reported at (UTC)": "2025-07-01T12:00:00.000Z",
        zone: "2-14",
        desk: "2-14-01",
        "thermal sensation vote": "-2",
        note: '\'=HYPERLINK("x")',
      }),
    ]);
    const assumption = rowsOf(file("assumptions.csv")).find((row) => row.assumption === "supply-air-temp");
    expect(assumption).toMatchObject({ value: "12.5", origin: "entered", reason: override.reason });
    expect(assumption?.["default value"]).not.toBe("12.5");

    const { assessment } = await readCostOfOvercooling(ctx, buildingId);
    if (assessment.status !== "ok") throw new Error("blocked");
    const components = rowsOf(file("cost-components.csv"));
    const total = components.pop();
    const part = (row: Record<string, string>) => Number(row["part of P50 (USD/year)"]);
    expect(part(total ?? {})).toBe(assessment.headline.p50);
    expect(components.reduce((sum, row) => sum + part(row), 0)).toBeCloseTo(assessment.headline.p50, 6);
    expect(rowsOf(file("cost-zones.csv")).reduce((sum, row) => sum + part(row), 0)).toBeCloseTo(
      assessment.headline.p50,
      6,
    );
    expect(JSON.parse(file("building.json")).cost.assessment.headline).toEqual(assessment.headline);
  });

  it("never writes a text that a spreadsheet would run, and leaves numbers numbers", async () => {
    const office = smallOffice();
    addZone(office.ctx, office.buildingId, { code: "@SUM(1+1)", name: '+1, "quoted"' });
    const file = await filesOf(office);
    expect(file("zones.csv")).toContain(`'@SUM(1+1),"'+1, ""quoted"""`);
    expect(
      csvText(
        ["a", "b"],
        [
          ["-5", -5],
          ["=1", 0.1],
        ],
      ),
    ).toBe("a,b\r\n'-5,-5\r\n'=1,0.1\r\n");
  });

  it("has the findings and no figures when there can be none, and is refused to anyone not signed in", async () => {
    const office = smallOffice();
    const cop = { value: 12, low: 11, high: 13, reason: "A slip of the pen" };
    overrideAssumption(office.ctx, office.buildingId, "cooling-cop/vav-reheat-high-minimum", cop);
    const file = await filesOf(office);
    expect(file("cost-findings.csv")).toContain("cop-implausible");
    expect(() => file("cost-components.csv")).toThrow();
    const anonymous = { ...office.ctx, actor: { kind: "anonymous" as const } };
    expect((await refusalOf(() => exportBuilding(anonymous, office.buildingId))).code).toBe("unauthenticated");
  });
});
