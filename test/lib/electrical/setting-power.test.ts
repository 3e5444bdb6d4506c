import { describe, expect, it } from "vitest";
import { deviceClassById } from "@/lib/electrical/device-classes";
import { electricalFindingText } from "@/lib/electrical/findings";
import { settingPower } from "@/lib/electrical/setting-power";
import type { SettingPowerOk, SettingPowerRefused, SettingReading } from "@/lib/electrical/setting-reading";
import { loadCheckValues } from "../../support/check-values";
import { clampReading } from "./readings";

const heater = deviceClassById("fan-heater-1500");
const deskFan = deviceClassById("desk-fan-small");

function known(reading: SettingReading, deviceClass = heater): SettingPowerOk {
  const power = settingPower(reading, deviceClass);
  if (power.status === "refused") throw new Error(power.message);
  return power;
}

function refused(reading: SettingReading, deviceClass = heater): SettingPowerRefused {
  const power = settingPower(reading, deviceClass);
  if (power.status === "ok") throw new Error(`computed ${power.powerW.value} W instead of refusing`);
  return power;
}

const codes = (power: SettingPowerOk): string[] => power.findings.map((each) => each.code);

describe("a fan read with a clamp meter", () => {
  const published = loadCheckValues<{ voltageV: number; currentA: number }>("electrical/motor-upper-bound").cases[0];
  const reading = clampReading({ kind: "personal-fan", settingName: "high-speed", ...published?.inputs });

  it("is an upper bound that says how far it can overstate", () => {
    const power = known(reading, deskFan);
    expect(power.isUpperBound).toBe(true);
    expect(power.powerW.value).toBeCloseTo(Number(published?.expected.powerW), 6);
    const finding = power.findings.find((each) => each.code === "power-factor-unknown");
    expect(finding && electricalFindingText(finding)).toContain("Upper bound");
  });

  it("reaches down to the published 12 W of the shaded-pole example", () => {
    expect(known(reading, deskFan).powerW.low).toBeLessThan(12);
  });

  it("is no upper bound once the power factor is given", () => {
    const power = known({ ...reading, powerFactor: 0.5 }, deskFan);
    expect(power.isUpperBound).toBe(false);
    expect(power.powerW.value).toBeCloseTo(21, 9);
    expect(power.expandedUncertaintyW).toBeGreaterThan(0.3 * power.powerW.value);
  });

  it("covers the fan-only setting of a heater too, but not its heat", () => {
    expect(known(clampReading({ settingName: "fan-only", currentA: 0.24 })).isUpperBound).toBe(true);
    expect(known(clampReading({})).isUpperBound).toBe(false);
  });
});

describe("small currents", () => {
  const fanOnly = clampReading({ settingName: "fan-only", currentA: 0.24 });

  it("are refused on a display of 0.1 A, with the remedy", () => {
    const refusal = refused({ ...fanOnly, currentA: 0.2, currentResolutionA: 0.1 });
    expect(refusal.code).toBe("current-below-meter");
    expect(refusal.message).toContain("fan only");
    expect(refusal.message).toContain("plug-in energy meter");
    expect(refusal.message).toContain("0.5 A");
  });

  it("are refused on a coarser display as well, and accepted from 1 A", () => {
    expect(refused({ ...fanOnly, currentResolutionA: 1, currentA: 0.9 }).code).toBe("current-below-meter");
    expect(known(clampReading({ currentA: 1, currentResolutionA: 0.1 })).powerW.value).toBe(120);
  });

  it("are accepted with a caution and a wide range on a display of 0.01 A or an unknown one", () => {
    for (const currentResolutionA of [0.01, null]) {
      const power = known({ ...fanOnly, currentResolutionA });
      expect(codes(power)).toContain("small-current");
      expect(power.powerW.high).toBeGreaterThan(1.2 * power.powerW.value);
    }
  });

  it("take a display of 0.1 A when the digits allow no better", () => {
    const coarse = known({ ...fanOnly, currentA: 0.2, currentResolutionA: null });
    const fine = known({ ...fanOnly, currentA: 0.2, currentResolutionA: 0.01 });
    expect(codes(coarse)).toContain("resolution-unknown");
    expect(coarse.powerW.high).toBeGreaterThan(2 * fine.powerW.high);
  });
});

describe("voltage", () => {
  it("narrows the range when it was read", () => {
    const assumed = known(clampReading({}));
    const measured = known(clampReading({ voltageMeasured: true }));
    expect(measured.standardUncertaintyW).toBeLessThan(0.6 * assumed.standardUncertaintyW);
    expect(codes(assumed)).toContain("voltage-not-measured");
    expect(codes(measured)).not.toContain("voltage-not-measured");
  });

  it("is less certain about 230 V than about 120 V", () => {
    const relative = (voltageV: number): number => {
      const power = known(clampReading({ voltageV }), null);
      return power.standardUncertaintyW / power.powerW.value;
    };
    expect(relative(230)).toBeGreaterThan(1.5 * relative(120));
  });

  it("comes from the class with a note, and is asked for when there is none", () => {
    expect(codes(known(clampReading({ voltageV: null })))).toContain("voltage-from-class");
    expect(refused(clampReading({ voltageV: null }), null).code).toBe("voltage-missing");
  });
});

describe("other bases", () => {
  it("tells a power factor where watts and amperes were both read", () => {
    // Shaded-pole motor of a published example: 12 W at 120 V and 0.35 A are 0.286.
    const power = known(clampReading({ basis: "plug-meter", powerW: 12, currentA: 0.35, voltageV: 120 }));
    expect(power.findings[0]).toMatchObject({ code: "power-factor-read", evidence: { apparentPowerVa: 42 } });
  });

  it("takes a plug-in meter to 2 % as a half-width", () => {
    const power = known(clampReading({ basis: "plug-meter", powerW: 1000, currentA: null }));
    expect(power.standardUncertaintyW).toBeCloseTo(20 / Math.sqrt(3), 9);
    expect(power.powerW.high - 1000).toBeCloseTo(40 / Math.sqrt(3), 9);
    expect(power.findings).toEqual([]);
  });

  it("gives a nameplate the accepted band", () => {
    const power = known(clampReading({ basis: "nameplate", nameplateW: 1500, currentA: null }));
    expect(power.powerW).toEqual({ value: 1500, low: 1350, high: 1575 });
    expect(codes(power)).toEqual(["nameplate-not-measured"]);
  });

  it("lets a motor draw 20 % more than its nameplate, and half as little", () => {
    // +20 % is IEC 60335-1:2010, 10.1, from memory; it has no lower limit, so half is judgement.
    const fan = { kind: "personal-fan", settingName: "high-speed", basis: "nameplate", nameplateW: 40 } as const;
    expect(known(clampReading(fan), deskFan).powerW).toEqual({ value: 40, low: 20, high: 48 });
  });

  it("gives a class default the range of the class", () => {
    const power = known(clampReading({ basis: "class-default", currentA: null }));
    expect(power.powerW).toEqual({ value: 1500, low: 1150, high: 1575 });
    expect(codes(power)).toEqual(["class-default-used"]);
  });

  it("says so when a figure on record is not the class default", () => {
    expect(codes(known(clampReading({ basis: "class-default", powerW: 1200 })))).toContain("class-default-differs");
  });

  it("refuses what is missing", () => {
    expect(refused(clampReading({ currentA: null })).code).toBe("current-missing");
    expect(refused(clampReading({ basis: "plug-meter" })).code).toBe("power-missing");
    expect(refused(clampReading({ basis: "nameplate" })).code).toBe("power-missing");
    expect(refused(clampReading({ basis: "class-default" }), null).code).toBe("class-unknown");
    const refusal = refused(clampReading({ basis: "class-default", settingName: "medium-heat" }));
    expect(refusal.code).toBe("class-without-setting");
    expect(refusal.message).toContain("low heat, high heat");
  });

  it("refuses what cannot be instead of computing with it", () => {
    expect(refused(clampReading({ currentA: -1 })).code).toBe("impossible-entry");
    expect(refused(clampReading({ currentA: Number.NaN })).code).toBe("impossible-entry");
    expect(refused(clampReading({ basis: "plug-meter", powerW: 50_000 })).code).toBe("impossible-entry");
  });
});

describe("a reading far from its class", () => {
  it("points at both wires in the jaws when it is near zero", () => {
    const power = known(clampReading({ currentA: 0.02 }));
    const finding = power.findings.find((each) => each.code === "reading-implausibly-low");
    expect(finding && electricalFindingText(finding)).toContain("both wires");
  });

  it("points at a ×10 loop when it is far too high", () => {
    expect(codes(known(clampReading({ settingName: "low-heat", currentA: 24 })))).toContain("reading-implausibly-high");
    expect(codes(known(clampReading({})))).not.toContain("reading-implausibly-high");
  });
});
