import { describe, expect, it } from "vitest";
import { listDeviceEvents } from "@/db/queries/devices";
import { listElectricityBills } from "@/db/queries/electricity-bills";
import { listDesks, listZones } from "@/db/queries/zones";
import type { TableKind } from "@/lib/importers/tables/table-read";
import { issueComfortLink, readComfortLinks } from "@/lib/services/comfort-links/manage";
import { readDevices } from "@/lib/services/devices/read";
import { registerDevice } from "@/lib/services/devices/register";
import { readImportHistory, readImportRun } from "@/lib/services/imports/history";
import { importTable } from "@/lib/services/imports/import-table";
import { takeFile } from "@/lib/services/imports/take-file";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";
import { bytesOf } from "@/test/factories/trend-csv";
import { refusalOf } from "@/test/support/refusal";

function office() {
  const base = smallOffice();
  const bring = (kind: TableKind, ...lines: string[]) =>
    importTable(base.ctx, base.buildingId, kind, { name: `${kind}.csv`, bytes: bytesOf(lines) });
  return { ...base, bring };
}

const counts = (run: ReturnType<typeof importTable>) => [run.samplesAdded, run.samplesChanged, run.samplesSame];

const TABLES: [TableKind, string[]][] = [
  ["zones", ["zone,name,area_m2,minimum_airflow_L/s", "3-01,North,80,60", "3-02,South,70,"]],
  ["desks", ["desk,zone,note", "2-14-09,2-14,window", "2-15-09,2-15,"]],
  [
    "devices",
    [
      "device,kind,class,zone,desk,setting,basis,current_A,power_W,hours_per_year",
      "H-7,heater,fan-heater-1500,2-14,2-14-01,high-heat,plug-meter,,1432,150",
      "H-7,,,,,low-heat,clamp,6.2,,300",
    ],
  ],
  ["bills", ["from,to,energy_kWh,charges", "2025-01-01,2025-01-31,28150,2635.2", "2025-02-01,2025-02-28,27830,"]],
];

describe("bringing a table in", () => {
  it.each(TABLES)("%s: the same file again changes nothing", (kind, lines) => {
    const { ctx, buildingId, bring } = office();
    const things = kind === "devices" ? 1 : 2;
    expect(counts(bring(kind, ...lines))).toEqual([things, 0, 0]);
    const state = () => [
      listZones(ctx.db, buildingId),
      listDesks(ctx.db, buildingId),
      readDevices(ctx, buildingId),
      listElectricityBills(ctx.db, buildingId),
    ];
    const before = state();
    expect(counts(bring(kind, ...lines))).toEqual([0, 0, things]);
    expect(state()).toEqual(before);
  });

  it("leaves alone what a file of zones has no column for", () => {
    const { ctx, buildingId, bring } = office();
    expect(counts(bring("zones", "zone,floor", "2-14,2"))).toEqual([0, 1, 0]);
    const zone = listZones(ctx.db, buildingId).find(({ code }) => code === "2-14");
    expect(zone).toMatchObject({ name: "Open office", floorAreaM2: 120, floor: "2" });
  });

  it("leaves alone the desk and the readings that a file of devices has no column for", () => {
    const { ctx, buildingId, bring } = office();
    registerDevice(ctx, buildingId, heaterInput({ settings: [settingInput({ voltageMeasured: true })] }));
    const lines = ["device,class,zone,setting,basis,hours_per_year", "H-001,fan-heater-1500,2-14,high-heat,clamp,500"];
    // The reading of a clamp is needed in the file itself: without its column the row is not taken.
    const refused = bring("devices", ...lines);
    expect(refused.rowsRejected).toBe(1);
    const withCurrent = lines.map((line, i) => `${line},${["current_A", "11.44"][i]}`);
    expect(counts(bring("devices", ...withCurrent))).toEqual([0, 1, 0]);
    const [device] = readDevices(ctx, buildingId);
    expect(device?.deskCode).toBe("2-14-01");
    expect(device?.settings[0]).toMatchObject({ voltageV: 120, voltageMeasured: true, hoursPerYear: 500 });
  });

  it("keeps the watts of a nameplate apart from those of a meter, and takes the same file as the same", () => {
    const { ctx, buildingId, bring } = office();
    const lines = ["device,class,zone,setting,basis,power_W", "H-050,fan-heater-1500,2-14,high-heat,nameplate,1500"];
    expect(counts(bring("devices", ...lines))).toEqual([1, 0, 0]);
    const [device] = readDevices(ctx, buildingId);
    expect(device?.settings[0]).toMatchObject({ basis: "nameplate", nameplateW: 1500, powerW: null });
    expect(listDeviceEvents(ctx.db, device?.id ?? 0).map(({ status }) => status)).toEqual(["found"]);
    expect(counts(bring("devices", ...lines))).toEqual([0, 0, 1]);
  });

  it("moves devices and links along when a desk turns out to stand in another zone", () => {
    const { ctx, buildingId, zoneId, deskId, bring } = office();
    registerDevice(ctx, buildingId, heaterInput());
    issueComfortLink(ctx, buildingId, { zoneId, deskId });
    expect(counts(bring("desks", "desk,zone", "2-14-01,2-15"))).toEqual([0, 1, 0]);
    expect(readDevices(ctx, buildingId)[0]).toMatchObject({ zoneCode: "2-15", deskCode: "2-14-01" });
    expect(readComfortLinks(ctx, buildingId)[0]).toMatchObject({ zoneCode: "2-15", deskCode: "2-14-01" });
  });

  it("takes the good rows, names the others by line, and all fates add up", () => {
    const { ctx, buildingId, bring } = office();
    const run = bring("desks", "desk,zone,note", "2-14-02,2-14,", "2-14-03,9-99,", "# a remark", "2-14-02,2-15,twice");
    expect(counts(run)).toEqual([1, 0, 0]);
    const { rowsAccepted, rowsRepaired, rowsHeldBack, rowsRejected, rowsIgnored, rowsInFile } = run;
    expect(rowsAccepted + rowsRepaired + rowsHeldBack + rowsRejected + rowsIgnored).toBe(rowsInFile);
    const { rows } = readImportRun(ctx, buildingId, run.id);
    const rejected = rows.filter((row) => row.fate === "rejected");
    expect(rejected.map((row) => row.line)).toEqual([3, 5]);
    expect(rejected[0]?.excerpt).toContain("9-99");
  });

  it("refuses a file of another kind and keeps the refusal on record", async () => {
    const { ctx, buildingId, bring } = office();
    const error = await refusalOf(() => bring("zones", "desk,zone,note", "2-14-02,2-14,"));
    expect(error.message).toContain("columns of a desks table");
    expect(readImportHistory(ctx, buildingId)[0]).toMatchObject({ state: "refused", message: error.message });
  });
});

describe("taking an uploaded file", () => {
  it("gives a refusal as an outcome, so that the other files go on", async () => {
    const { ctx, buildingId } = office();
    const text = await takeFile(ctx, buildingId, "trends", { name: "notes.txt", bytes: bytesOf(["Dear all,"]) });
    expect(text).toMatchObject({ state: "received", message: "Received; it is read and imported in its turn." });
    const nothing = await takeFile(ctx, buildingId, "trends", { name: "none.csv", bytes: new Uint8Array(0) });
    expect(nothing.state).toBe("refused");
    const empty = await takeFile(ctx, buildingId, "zones", { name: "empty.csv", bytes: new Uint8Array(0) });
    expect(empty).toMatchObject({ state: "refused", message: "The file is empty: export it again." });
    const desks = await takeFile(ctx, buildingId, "desks", {
      name: "desks.csv",
      bytes: bytesOf(["desk,zone", "2-14-02,2-14"]),
    });
    expect(desks.state).toBe("imported");
  });
});
