import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { findDeviceByLabel, listDevices } from "@/db/queries/devices";
import { readDevice } from "@/lib/services/devices/read";
import { readImportRun } from "@/lib/services/imports/history";
import { changeRegisterMapping, type RegisterMappingInput, readRegisterView } from "@/lib/services/registers/mapping";
import { receiveRegister } from "@/lib/services/registers/receive";
import { takeRegister } from "@/lib/services/registers/take";
import { smallOffice } from "@/test/factories/office";
import { refusalOf } from "@/test/support/refusal";
import { hasSharedSet } from "@/test/support/shared-sets";

async function receivedFile(name: string, bytes: Uint8Array, changes: Parameters<typeof smallOffice>[0] = {}) {
  const office = smallOffice(changes);
  const { ctx, buildingId } = office;
  const importId = await receiveRegister(ctx, buildingId, { name, bytes });
  const view = () => readRegisterView(ctx, buildingId, importId);
  const map = async (change: Partial<RegisterMappingInput>) => {
    const { mapping, classes } = await view();
    const said = Object.fromEntries(classes.map(({ text, chosen }) => [text, chosen]));
    await changeRegisterMapping(ctx, buildingId, importId, {
      ...mapping,
      sheet: mapping.sheet ?? "",
      classes: said,
      ...change,
    });
  };
  return { ...office, importId, view, map, take: () => takeRegister(ctx, buildingId, importId) };
}

const received = (...lines: string[]) => receivedFile("register.csv", new TextEncoder().encode(lines.join("\n")));

describe("somebody's own register", () => {
  it("is understood by its headings, shows each row's fate before anything is taken, and is taken once", async () => {
    const { ctx, buildingId, view, take } = await received(
      "Heaters on two, surveyed by hand",
      "Asset tag,Type,Desk,Rated power (W),Brand,Comments",
      "H-1,Ceramic space heater,2-14-01,1500 W,Acme,under desk",
      "H-2,Desk fan,2-15-01,,,",
      "H-3,Kettle,2-15-01,2000,,",
      "H-1,Ceramic space heater,2-14-01,1500,,",
      "H-4,Desk fan,9-99,20,,",
      ",,,,,",
    );
    const before = await view();
    expect(before.mapping.columns).toEqual({ deskCode: 2, nameplateW: 3, make: 4, deviceClass: 1, label: 0, note: 5 });
    expect(before.classes).toEqual([
      { text: "Ceramic space heater", chosen: "fan-heater-1500" },
      { text: "Desk fan", chosen: "desk-fan-small" },
      { text: "Kettle", chosen: "" },
    ]);
    expect(before.fates.map(({ line, fate }) => [line, fate])).toEqual([
      [1, "ignored"],
      [2, "ignored"],
      [3, "accepted"],
      [4, "repaired"],
      [5, "rejected"],
      [6, "rejected"],
      [7, "rejected"],
    ]);
    expect(listDevices(ctx.db, buildingId)).toEqual([]);
    const run = await take();
    expect(run).toMatchObject({ rowsInFile: 7, rowsAccepted: 1, rowsRepaired: 1, rowsRejected: 3, rowsIgnored: 2 });
    const { rows } = readImportRun(ctx, buildingId, run.id);
    expect(rows.find(({ line }) => line === 5)?.excerpt).toContain('no class was chosen for "Kettle"');
    expect((await refusalOf(take)).code).toBe("conflict");
    const heater = findDeviceByLabel(ctx.db, buildingId, "H-1");
    expect(heater).toMatchObject({ make: "Acme", nameplateW: 1500, note: "under desk", status: "found" });
  });

  it("keeps the nameplate apart from what was measured, and says where figures come from", async () => {
    const { ctx, buildingId, take } = await received(
      "label,type,zone,nameplate (kW),measured W,hours per year",
      "A,Fan heater,2-14,1.5,1432,200",
      "B,Fan heater,2-14,1.5,,",
      "C,Fan heater,2-14,,,",
    );
    await take();
    const sheet = (label: string) => {
      const device = readDevice(ctx, buildingId, findDeviceByLabel(ctx.db, buildingId, label)?.id ?? 0);
      const setting = device.settings.at(-1);
      return [setting?.basis, device.nameplateW, setting?.powerW, device.sheet.highPowerW, setting?.hoursPerYear];
    };
    expect(sheet("A")).toEqual(["plug-meter", 1500, 1432, 1432, 200]);
    expect(sheet("B")).toEqual(["nameplate", 1500, null, 1500, 0]);
    expect(sheet("C")).toEqual(["class-default", null, null, 1500, 0]);
  });

  it("refuses a column that is two things, and keeps what was chosen for a text", async () => {
    const { map, view } = await received("no,type,zone,watts", "7,Thing,2-14,30");
    expect(
      (await refusalOf(() => map({ columns: { label: 0, deviceClass: 1, description: 1 } }))).fieldErrors,
    ).toHaveProperty("column.description");
    await map({ labelPrefix: "H-", classes: { Thing: "desk-fan" } });
    const { rows, classes } = await view();
    expect(classes).toEqual([{ text: "Thing", chosen: "desk-fan" }]);
    expect(rows).toMatchObject([{ label: "H-7", deviceClass: "desk-fan", nameplateW: 30 }]);
    await map({ classes: { Thing: "leave-out" } });
    expect((await view()).fates.at(-1)).toMatchObject({ fate: "ignored", code: "left-out" });
  });

  it("opens a workbook that another program wrote, with its numbers, dates and second sheet", async () => {
    // Written by register-workbook.py, beside the file, from the parts of ECMA-376 that a small workbook needs.
    const bytes = readFileSync(new URL("../../fixtures/register/register.xlsx", import.meta.url));
    const { ctx, buildingId, view, take } = await receivedFile("register.xlsx", bytes);
    const { sheets, rows } = await view();
    expect(sheets).toEqual(["Heaters", "Fans"]);
    expect(rows).toMatchObject([
      { label: "H-001", nameplateW: 1500, foundOn: "2025-06-20", zoneCode: "2-14" },
      { label: "H-002", nameplateW: 900.5, foundOn: "2025-06-21", zoneCode: "2-15" },
    ]);
    await take();
    expect(listDevices(ctx.db, buildingId).map(({ label, foundOn }) => [label, foundOn])).toEqual([
      ["H-001", "2025-06-20"],
      ["H-002", "2025-06-21"],
    ]);
  });

  it("refuses what is no table, a damaged workbook and an empty file, in words", async () => {
    const { ctx, buildingId } = smallOffice();
    const messageOf = async (name: string, bytes: Uint8Array) =>
      (await refusalOf(() => receiveRegister(ctx, buildingId, { name, bytes }))).message;
    expect(await messageOf("a.xlsx", Uint8Array.from([0x50, 0x4b, 3, 4, 0, 0]))).toContain("no XLSX workbook");
    expect(await messageOf("a.csv", new TextEncoder().encode("just words\nand more\n"))).toContain("one column only");
    expect(await messageOf("a.pdf", new TextEncoder().encode("%PDF-1.7"))).toContain("PDF");
    expect(await messageOf("a.csv", new TextEncoder().encode(",\n,\n"))).toContain("no cell");
  });
});

describe.skipIf(!hasSharedSet("device-nameplates"))("the published list of 20 desk fans and heaters", () => {
  const bytes = () =>
    readFileSync(new URL("../../../../shared/data/device-nameplates/pcs_product_info.csv", import.meta.url));

  it("comes in whole, with watts that are blank in rows 15 and 19 left to the class", async () => {
    const { ctx, buildingId, view, map, take } = await receivedFile("pcs_product_info.csv", bytes(), {
      mainsVoltageV: 230,
    });
    const proposed = await view();
    expect(proposed.mapping.columns).toMatchObject({
      label: 0,
      description: 1,
      kind: 2,
      deviceClass: 4,
      nameplateW: 15,
    });
    await map({ defaultZoneCode: "2-14", labelPrefix: "PCS-" });
    await map({ classes: { "Evaporative cooler": "desk-fan", "Heating pad": "heated-mat" } });
    const { rows, fates } = await view();
    expect(rows).toHaveLength(20);
    expect(fates.filter(({ fate }) => fate === "repaired").map((fate) => fate.line - 1)).toEqual([15, 19]);
    const run = await take();
    expect(run).toMatchObject({ rowsInFile: 21, rowsAccepted: 18, rowsRepaired: 2, rowsRejected: 0, rowsIgnored: 1 });
    const label = findDeviceByLabel(ctx.db, buildingId, "PCS-20");
    expect(label).toMatchObject({ nameplateW: 1200, kind: "space-heater" });
    for (const blank of ["PCS-15", "PCS-19"]) {
      const device = readDevice(ctx, buildingId, findDeviceByLabel(ctx.db, buildingId, blank)?.id ?? 0);
      expect([device.nameplateW, device.settings.map(({ basis }) => basis)]).toEqual([
        null,
        device.settings.map(() => "class-default"),
      ]);
    }
    expect(listDevices(ctx.db, buildingId).filter(({ kind }) => kind === "personal-fan")).toHaveLength(13);
  });
});
