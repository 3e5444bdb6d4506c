import { describe, expect, it } from "vitest";
import {
  basesOf,
  lineFigures,
  registerLede,
  sheetInputFromDevice,
  totalFigures,
} from "@/app/buildings/[buildingId]/devices/view-model";
import { deviceSheet } from "@/lib/electrical/device-sheet";
import type { DeviceInput } from "@/lib/services/devices/device-input";
import { readDevices } from "@/lib/services/devices/read";
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
    expect(registerLede([])).toContain("Heaters and fans");
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
    expect(registerLede(readDevices(ctx, buildingId))).toBe(
      "1 heater and 1 fan in use, 120 kWh a year together; 1 retired.",
    );
  });

  it("names how a device's figures are known by the settings that count", () => {
    const { ctx, buildingId } = smallOffice();
    const settings = [
      settingInput(),
      settingInput({ name: "low-heat", basis: "class-default", currentA: null, hoursPerYear: 0 }),
    ];
    registerDevice(ctx, buildingId, heaterInput({ settings }));
    expect(readDevices(ctx, buildingId).map(basesOf)).toEqual(["clamp meter"]);
  });
});
