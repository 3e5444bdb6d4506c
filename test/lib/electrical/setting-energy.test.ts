import { describe, expect, it } from "vitest";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { settingCost } from "@/lib/electrical/setting-cost";
import { type DeviceSettingUse, deviceEnergy, settingEnergy } from "@/lib/electrical/setting-energy";
import { settingPower } from "@/lib/electrical/setting-power";
import type { SettingPower } from "@/lib/electrical/setting-reading";
import { compareWithCase, loadCheckValues } from "../../support/check-values";
import { clampReading } from "./readings";

const heater = deviceClassById("fan-heater-1500");

const exactly = (powerW: number): SettingPower => ({
  status: "ok",
  basis: "plug-meter",
  powerW: { value: powerW, low: 0.9 * powerW, high: 1.1 * powerW },
  standardUncertaintyW: 0,
  expandedUncertaintyW: 0,
  isUpperBound: false,
  findings: [],
});

describe("energy of a device over its settings", () => {
  type States = { states: { state: string; P_kW: number; h_selected: number; duty: number }[] };
  for (const check of loadCheckValues<States>("electrical/annual-energy").cases) {
    it(check.name, () => {
      const device = deviceEnergy(
        check.inputs.states.map((each) => ({
          name: each.state,
          power: exactly(each.P_kW * 1000),
          hoursPerYear: each.h_selected,
          dutyFraction: each.duty,
        })),
      );
      if (device.status === "refused") throw new Error(device.message);
      const bySetting = device.settings.map(({ outcome }) => (outcome.status === "ok" ? outcome.energyKwh.value : NaN));
      compareWithCase(check, { kWh_by_state: bySetting, kWh: device.totalKwh.value });
      expect(device.unassignedHours).toBe(0);
      expect(device.totalKwh.low).toBeCloseTo(0.9 * device.totalKwh.value, 9);
    });
  }

  const use = (hoursPerYear: number, power = exactly(100)): DeviceSettingUse => ({
    name: `for ${hoursPerYear} h`,
    power,
    hoursPerYear,
    dutyFraction: 1,
  });

  it("refuses more hours than the year has", () => {
    expect(deviceEnergy([use(8000), use(760)]).status).toBe("ok");
    const refusal = deviceEnergy([use(8000), use(761)]);
    expect(refusal).toMatchObject({ status: "refused", code: "hours-over-year" });
    expect(refusal.status === "refused" && refusal.message).toContain("8761 hours");
    expect(deviceEnergy([use(8000), use(784)], 8784).status).toBe("ok");
  });

  it("names the settings that are not in the total", () => {
    const refusedPower = settingPower(clampReading({ currentA: 0.2, currentResolutionA: 0.1 }), heater);
    const device = deviceEnergy([use(100), use(50, refusedPower)]);
    expect(device).toMatchObject({ status: "ok", leftOut: ["for 50 h"], totalKwh: { value: 10 } });
  });

  it("refuses a duty cycle typed as a percentage", () => {
    const energy = settingEnergy({ value: 100, low: 90, high: 110 }, { hoursPerYear: 10, dutyFraction: 60 });
    expect(energy.status).toBe("refused");
  });
});

describe("a heater measured at its settings", () => {
  type Measured = {
    settingName: string;
    currentA: number;
    voltageV: number;
    hoursPerYear: number;
    pricePerKwh: number;
  };
  for (const check of loadCheckValues<Measured>("electrical/measured-settings").cases) {
    it(check.name, () => {
      const { settingName, currentA, voltageV, hoursPerYear, pricePerKwh } = check.inputs;
      const power = settingPower(
        clampReading({ settingName, currentA, voltageV, voltageMeasured: true, currentResolutionA: null }),
        heater,
      );
      if (power.status === "refused") throw new Error(power.message);
      const energy = settingEnergy(power.powerW, { hoursPerYear, dutyFraction: 1 });
      if (energy.status === "refused") throw new Error(energy.message);
      const cost = settingCost(energy.energyKwh, pricePerKwh);
      if (cost.status === "refused") throw new Error(cost.message);
      compareWithCase(check, {
        powerW: power.powerW.value,
        energyKwh: energy.energyKwh.value,
        cost: cost.cost.value,
      });
      expect(power.isUpperBound).toBe(settingName === "fan-only");
      expect(cost.cost.low).toBeLessThan(cost.cost.value);
      expect(cost.cost.high).toBeGreaterThan(cost.cost.value);
    });
  }

  it("refuses a negative price", () => {
    expect(settingCost({ value: 1, low: 1, high: 1 }, -0.13).status).toBe("refused");
  });
});
