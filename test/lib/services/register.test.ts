import { describe, expect, it } from "vitest";
import { moveDevice } from "@/lib/services/devices/life";
import { readRegister } from "@/lib/services/devices/list/read-register";
import { registerQuery } from "@/lib/services/devices/list/register-query";
import { readDevices } from "@/lib/services/devices/read";
import { registerDevice, reviseDevice } from "@/lib/services/devices/register";
import { recordInspection } from "@/lib/services/inspections/record";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";

/** Three heaters and a fan: 100, 200 and 300 kWh, and one whose reading is refused. */
function officeWithRegister() {
  const office = smallOffice({ electricityPricePerKwh: 0.1 });
  const add = (label: string, hoursPerYear: number, changes: Parameters<typeof heaterInput>[0] = {}) =>
    registerDevice(
      office.ctx,
      office.buildingId,
      heaterInput({
        label,
        settings: [settingInput({ basis: "plug-meter", powerW: 1000, currentA: null, hoursPerYear })],
        ...changes,
      }),
    );
  const elsewhere = { zoneCode: "2-15", deskCode: "2-15-01" };
  const ids = {
    first: add("H-2", 100),
    second: add("H-10", 200, { ...elsewhere, make: "Warmwell" }),
    third: add("H-1", 300, {
      settings: [settingInput({ basis: "nameplate", nameplateW: 1000, currentA: null, hoursPerYear: 300 })],
    }),
    fan: add("F-1", 50, {
      kind: "personal-fan",
      deviceClass: "desk-fan",
      ...elsewhere,
      settings: [settingInput({ name: "high-speed", currentA: 0.3, currentResolutionA: 0.1, hoursPerYear: 50 })],
    }),
  };
  const read = (words: Record<string, string> = {}) =>
    readRegister(office.ctx, office.buildingId, registerQuery(words));
  const labels = (words: Record<string, string> = {}) => read(words).rows.map(({ label }) => label);
  return { ...office, ids, read, labels };
}

describe("the register", () => {
  it("says the same of a device as its sheet does", () => {
    const { ctx, buildingId, read } = officeWithRegister();
    const rows = new Map(read().rows.map((row) => [row.id, row]));
    for (const { id, sheet } of readDevices(ctx, buildingId)) {
      const row = rows.get(id);
      expect(row?.energyKwh ?? null).toEqual(
        sheet.totalCost && sheet.energy.status === "ok" ? sheet.energy.totalKwh : null,
      );
      expect(row?.cost?.value).toBe(sheet.totalCost?.value);
      expect(row?.highPowerW).toBe(sheet.highPowerW);
    }
  });

  it("filters, and its totals follow", () => {
    const { read, labels } = officeWithRegister();
    expect(labels()).toEqual(["F-1", "H-1", "H-2", "H-10"]);
    expect(labels({ zone: "2-15" })).toEqual(["F-1", "H-10"]);
    expect(labels({ q: "warmwell 2-15" })).toEqual(["H-10"]);
    expect(labels({ class: "desk-fan" })).toEqual(["F-1"]);
    expect(labels({ origin: "nameplate" })).toEqual(["H-1"]);
    expect(labels({ q: "nobody" })).toEqual([]);
    // By hand: 100 + 200 + 300 kWh at 0.10; the fan's clamp reading is below what its meter can tell.
    const all = read();
    expect(all.totals).toMatchObject({ devices: 4, heaters: 3, unknown: 1 });
    expect(all.totals.energyKwh.value).toBeCloseTo(600, 9);
    expect(all.totals.cost.value).toBeCloseTo(60, 9);
    expect(read({ zone: "2-15" }).totals.energyKwh.value).toBeCloseTo(200, 9);
    expect(all.workings.cost.result.value).toBeCloseTo(60, 9);
  });

  it("orders either way, numbers in labels as numbers, ties by label", () => {
    const { labels } = officeWithRegister();
    expect(labels({ order: "down" })).toEqual(["H-10", "H-2", "H-1", "F-1"]);
    expect(labels({ sort: "energy", order: "down" })).toEqual(["H-1", "H-10", "H-2", "F-1"]);
    expect(labels({ sort: "zone" })).toEqual(["H-1", "H-2", "F-1", "H-10"]);
    expect(labels({ sort: "power" })[0]).toBe("F-1");
  });

  it("groups with totals of each, those of a life in its order", () => {
    const { ctx, buildingId, ids, read, labels } = officeWithRegister();
    const byZone = read({ group: "zone" });
    expect(byZone.groups.map(({ key, totals }) => [key, totals.devices, Math.round(totals.energyKwh.value)])).toEqual([
      ["2-14", 2, 400],
      ["2-15", 2, 200],
    ]);
    expect(labels({ group: "zone", sort: "energy", order: "down" })).toEqual(["H-1", "H-2", "H-10", "F-1"]);
    moveDevice(ctx, buildingId, ids.first, { status: "to-be-removed", onDate: "2025-06-25" });
    expect(read({ group: "status" }).groups.map(({ key }) => key)).toEqual(["found", "to-be-removed"]);
  });

  it("shows what was removed when asked, and counts it no longer", () => {
    const { ctx, buildingId, ids, read, labels } = officeWithRegister();
    moveDevice(ctx, buildingId, ids.third, { status: "removed", onDate: "2025-06-25" });
    expect(labels()).not.toContain("H-1");
    expect(labels({ status: "removed" })).toEqual(["H-1"]);
    expect(read({ status: "all" })).toMatchObject({ count: 4, totals: { devices: 3, removed: 1 } });
    expect(read({ status: "all" }).totals.energyKwh.value).toBeCloseTo(300, 9);
  });

  it("sees at once what was written: a reading, a price, an inspection", () => {
    const { ctx, buildingId, ids, read, labels } = officeWithRegister();
    expect(read().totals.energyKwh.value).toBeCloseTo(600, 9);
    const settings = [settingInput({ basis: "plug-meter", powerW: 500, currentA: null, hoursPerYear: 100 })];
    reviseDevice(ctx, buildingId, ids.first, heaterInput({ label: "H-2", settings }));
    expect(read().totals.energyKwh.value).toBeCloseTo(550, 9);
    ctx.db.$client.prepare("update building set electricity_price_per_kwh = 0.2").run();
    expect(read().totals.cost.value).toBeCloseTo(110, 9);
    const items = { damaged: { outcome: "fail" as const } };
    const inspection = { checklist: "us-ifc-2018" as const, inspectedOn: "2025-06-24", items };
    recordInspection(ctx, buildingId, ids.first, inspection);
    expect(labels({ condition: "out-of-use" })).toEqual(["H-2"]);
  });

  it("comes in parts of a hundred, and knows no page beyond its last", () => {
    const { ctx, buildingId, read } = officeWithRegister();
    for (let i = 0; i < 100; i++) registerDevice(ctx, buildingId, heaterInput({ label: `Z-${i}` }));
    expect(read()).toMatchObject({ count: 104, pages: 2, page: 1, first: 1 });
    expect(read().rows).toHaveLength(100);
    expect(read({ page: "7" })).toMatchObject({ page: 2, first: 101 });
    expect(read({ page: "7" }).rows.map(({ label }) => label)).toEqual(["Z-96", "Z-97", "Z-98", "Z-99"]);
  });
});
