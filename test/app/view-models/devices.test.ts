import { describe, expect, it } from "vitest";
import {
  inspectionWords,
  registerAddress,
  registerLede,
  rowFigures,
  sortAddress,
  totalSentence,
} from "@/app/buildings/[buildingId]/devices/register-view-model";
import {
  ADD_SETTING,
  removeSetting,
  SHOW_FIGURES,
  sheetAfter,
} from "@/app/buildings/[buildingId]/devices/sheet-entries";
import { lineFigures, sheetInputFromDevice, totalFigures } from "@/app/buildings/[buildingId]/devices/view-model";
import { deviceSheet } from "@/lib/electrical/device-sheet";
import type { DeviceInput } from "@/lib/services/devices/device-input";
import { readRegister } from "@/lib/services/devices/list/read-register";
import { registerQuery } from "@/lib/services/devices/list/register-query";
import { registerDevice, retireDevice } from "@/lib/services/devices/register";
import { heaterInput, settingInput, smallOffice } from "@/test/factories/office";

const price = { pricePerKwh: 0.13, currency: "USD", origin: "entered" as const };
const sheet = (settings: DeviceInput["settings"]) =>
  deviceSheet(sheetInputFromDevice(heaterInput({ settings }), price));

describe("the figures of a device", () => {
  it("are printed with their digits, and an upper bound as one", () => {
    const both = sheet([
      settingInput({ powerFactor: 1, hoursPerYear: 2000 }),
      settingInput({ name: "fan-only", currentA: 0.24, hoursPerYear: 10 }),
    ]);
    expect(lineFigures(both.lines[0] as never)).toMatchObject({
      powerW: "1,372.8",
      energyKwh: "2,745.6",
      cost: "356.93",
    });
    expect(lineFigures(both.lines[1] as never).powerW).toBe("\u2264\u200928.8");
    expect(totalFigures(both).energyKwh).toBe("\u2264\u20092,745.9");
  });

  it("say that they are not known instead of showing a zero", () => {
    const none = sheet([settingInput({ currentA: null })]);
    expect(lineFigures(none.lines[0] as never)).toEqual({
      powerW: "not known",
      rangeW: "",
      energyKwh: "not known",
      cost: "not known",
    });
    expect(totalFigures(sheet([settingInput({ hoursPerYear: 8784 })])).cost).toBe("not known");
  });
});

describe("the register", () => {
  it("sums up what is in use, and tells what is retired", () => {
    const { ctx, buildingId } = smallOffice();
    expect(registerLede(readRegister(ctx, buildingId, registerQuery({})))).toContain("Heaters and fans");
    const plug = settingInput({ basis: "plug-meter", powerW: 1000, currentA: null, hoursPerYear: 100 });
    registerDevice(ctx, buildingId, heaterInput({ settings: [plug] }));
    const gone = registerDevice(ctx, buildingId, heaterInput({ label: "H-002", settings: [plug] }));
    const fan = { label: "F-001", kind: "personal-fan" as const, deviceClass: "desk-fan" };
    const fanSetting = settingInput({
      name: "high-speed",
      basis: "plug-meter",
      powerW: 40,
      currentA: null,
      hoursPerYear: 500,
    });
    registerDevice(ctx, buildingId, heaterInput({ ...fan, settings: [fanSetting] }));
    retireDevice(ctx, buildingId, gone, "2025-06-30");
    // 1 kW * 100 h + 0.04 kW * 500 h = 120 kWh.
    const part = readRegister(ctx, buildingId, registerQuery({ status: "all" }));
    expect(registerLede(part)).toBe("1 heater and 1 fan in use, 120 kWh a year together; 1 removed.");
    expect(totalSentence(part)).toBe(
      "The last line adds up 2 devices in use, on all pages. 1 removed are shown and not counted.",
    );
    expect(rowFigures(part.totals).energyKwh).toBe("120.0");
  });

  it("says of an inspection that the next one is overdue, and not of a removed device", () => {
    const row = { condition: "in-order" as const, nextDueOn: "2026-01-20", retiredOn: null };
    expect(inspectionWords(row, "2026-01-20")).toBe("in order");
    expect(inspectionWords(row, "2026-01-21")).toBe("in order, next overdue");
    expect(inspectionWords({ ...row, retiredOn: "2026-01-01" }, "2026-01-21")).toBe("in order");
  });

  it("keeps its query in its address, and turns a column round that orders already", () => {
    const query = registerQuery({
      zone: "2-14",
      sort: "energy",
      order: "down",
      page: "3",
      class: "<odd>",
      status: "nonsense",
    });
    expect(registerAddress("/devices", query)).toBe("/devices?zone=2-14&class=%3Codd%3E&sort=energy&order=down&page=3");
    expect(sortAddress("/devices", registerQuery({ sort: "energy", order: "down" }), "energy")).toBe(
      "/devices?sort=energy",
    );
    expect(sortAddress("/devices", registerQuery({}), "cost")).toBe("/devices?sort=cost&order=down");
    expect(registerAddress("/devices", registerQuery({}))).toBe("/devices");
  });
});

describe("a sheet between its buttons", () => {
  const values = {
    label: "H-1",
    settingCount: "2",
    "settings.0.name": "low-heat",
    "settings.0.currentA": "6.1",
    "settings.1.name": "high-heat",
    "settings.1.currentA": "12.2",
    "settings.1.meterName": "clamp 3",
    newSetting: "fan-only",
    newSettingName: "",
  };

  it("gets a setting more, with the meter of the one before, and keeps what was typed", () => {
    expect(sheetAfter(values, ADD_SETTING)).toMatchObject({
      label: "H-1",
      settingCount: "3",
      "settings.1.currentA": "12.2",
      "settings.2.name": "fan-only",
      "settings.2.meterName": "clamp 3",
      newSetting: "",
    });
    expect(sheetAfter({ ...values, newSetting: "", newSettingName: "eco" }, ADD_SETTING)?.["settings.2.name"]).toBe(
      "eco",
    );
    expect(sheetAfter({ ...values, newSetting: "" }, ADD_SETTING)?.settingCount).toBe("2");
  });

  it("loses the one that is taken out, and never the last", () => {
    const after = sheetAfter(values, removeSetting(0));
    expect(after).toMatchObject({ settingCount: "1", "settings.0.name": "high-heat", "settings.0.currentA": "12.2" });
    expect(after?.["settings.1.name"]).toBeUndefined();
    expect(sheetAfter({ ...values, settingCount: "1" }, removeSetting(0))?.settingCount).toBe("1");
  });

  it("stays as it is for its figures, and is saved by any other button", () => {
    expect(sheetAfter(values, SHOW_FIGURES)).toEqual(values);
    expect(sheetAfter(values, "save")).toBeNull();
  });
});
