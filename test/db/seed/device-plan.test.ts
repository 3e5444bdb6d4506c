import { describe, expect, it } from "vitest";
import { devicePlans } from "@/db/seed/device-plan";
import { deviceSettings } from "@/db/seed/device-settings";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { settingPower } from "@/lib/electrical/setting-power";

const devices = devicePlans();
const inUse = devices.filter(({ retiredOn }) => retiredOn === null);

describe("the devices of the demo building", () => {
  it("are 40 heaters and 25 fans in use, and a few retired, each with a label of its own", () => {
    expect(inUse.filter(({ deviceClass }) => deviceClass.kind === "space-heater").length).toBe(40);
    expect(inUse.filter(({ deviceClass }) => deviceClass.kind === "personal-fan").length).toBe(25);
    expect(devices.length - inUse.length).toBe(4);
    expect(new Set(devices.map(({ label }) => label)).size).toBe(devices.length);
  });

  it("are of classes that the register knows, with the settings of their class", () => {
    for (const { deviceClass, label } of devices) {
      const known = deviceClassById(deviceClass.id);
      expect(known?.kind, label).toBe(deviceClass.kind);
      expect(
        known?.settings.map(({ name }) => name),
        label,
      ).toEqual(deviceClass.settings.map(({ name }) => name));
    }
  });

  it("have readings that give a power, near what their class usually takes", () => {
    const bases = new Set<string>();
    for (const device of devices) {
      const known = deviceClassById(device.deviceClass.id);
      for (const { name, hoursPerYear, ...row } of deviceSettings(device, 400)) {
        const power = settingPower(
          {
            kind: device.deviceClass.kind,
            settingName: name,
            basis: row.basis,
            currentA: row.currentA ?? null,
            currentResolutionA: row.currentResolutionA ?? null,
            voltageV: row.voltageV ?? null,
            voltageMeasured: row.voltageMeasured ?? false,
            powerFactor: row.powerFactor ?? null,
            powerW: row.powerW ?? null,
          },
          known,
        );
        if (power.status !== "ok") throw new Error(`${device.label} ${name}: ${power.message}`);
        bases.add(row.basis);
        const usual = known?.settings.find((each) => each.name === name);
        expect(power.powerW.low, `${device.label} ${name}`).toBeLessThanOrEqual(1.1 * (usual?.highW ?? 0));
        expect(power.powerW.high, `${device.label} ${name}`).toBeGreaterThanOrEqual(0.9 * (usual?.lowW ?? 0));
      }
    }
    expect(bases).toEqual(new Set(["clamp", "plug-meter", "class-default"]));
  });

  it("have hours that add up to a year", () => {
    for (const device of devices) {
      const hours = deviceSettings(device, 613).map(({ hoursPerYear }) => hoursPerYear ?? 0);
      expect(
        hours.reduce((sum, each) => sum + each, 0),
        device.label,
      ).toBe(8760);
      expect(Math.min(...hours), device.label).toBeGreaterThanOrEqual(0);
    }
  });
});
