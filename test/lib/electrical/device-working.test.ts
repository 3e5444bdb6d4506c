import { describe, expect, it } from "vitest";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { settingWorkings, type WorkingInput } from "@/lib/electrical/device-working";
import { settingPower } from "@/lib/electrical/setting-power";
import type { SettingReading } from "@/lib/electrical/setting-reading";
import { assumptionsUsed, type Working } from "@/lib/working/working";
import { clampReading } from "./readings";

function workings(given: Partial<SettingReading>) {
  const reading = clampReading(given);
  const deviceClass = deviceClassById("fan-heater-1500");
  const power = settingPower(reading, deviceClass);
  if (power.status === "refused") throw new Error(power.message);
  const price: WorkingInput["price"] = { pricePerKwh: 0.13, currency: "USD", origin: "entered", assumptionId: "price" };
  return settingWorkings({ reading, deviceClass, power, hoursPerYear: 2000, dutyFraction: 0.5, price });
}

const product = (working: Working, symbols: string[]): number =>
  symbols.reduce((result, symbol) => {
    const term = working.terms.find((each) => each.symbol === symbol);
    if (!term) throw new Error(`no ${symbol} in "${working.formula}"`);
    return result * term.value;
  }, 1);

describe("working of a setting", () => {
  it("gives terms that multiply up to the result, step by step", () => {
    const { power, energy, cost } = workings({});
    expect(product(power, ["V", "I", "PF"])).toBeCloseTo(power.result.value, 9);
    expect(product(energy, ["P", "h", "d"]) / 1000).toBeCloseTo(energy.result.value, 9);
    expect(product(cost, ["E", "p"])).toBeCloseTo(cost.result.value, 9);
    expect(cost.terms[0]?.working).toBe(energy);
    expect(energy.terms[0]?.working).toBe(power);
    expect(assumptionsUsed(cost)).toEqual(["price"]);
  });

  it("tells measured from assumed", () => {
    const origins = (working: Working) => working.terms.map((each) => each.origin);
    expect(origins(workings({}).power)).toEqual(["default", "measured", "default"]);
    expect(origins(workings({ voltageMeasured: true, powerFactor: 0.99 }).power)).toEqual([
      "measured",
      "measured",
      "entered",
    ]);
    expect(origins(workings({ basis: "nameplate", nameplateW: 1500 }).power)).toEqual(["entered"]);
    expect(origins(workings({ basis: "class-default" }).power)).toEqual(["default"]);
    expect(origins(workings({ basis: "plug-meter", powerW: 1400 }).power)).toEqual(["measured"]);
  });

  it("calls a fan's clamp figure an upper bound in every step", () => {
    const { power, energy, cost } = workings({ settingName: "fan-only", currentA: 0.24 });
    for (const each of [power, energy, cost]) expect(each.result.label).toContain("upper bound");
    expect(power.notes?.join(" ")).toContain("power factor is below 1");
  });

  it("gives a source for every term that was not typed", () => {
    for (const basis of ["clamp", "nameplate", "class-default", "plug-meter"] as const) {
      const powerW = basis === "plug-meter" ? 1400 : null;
      for (const term of workings({ basis, powerW, nameplateW: 1400 }).power.terms)
        expect(term.source, term.label).toBeTruthy();
    }
  });
});
