import { describe, expect, it } from "vitest";
import { classSourceText, DEVICE_CLASSES, deviceClassById } from "@/lib/electrical/device-classes";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

describe("device classes", () => {
  const compiled = loadCheckValues<{ kind: string }>("electrical/device-classes").cases;

  it("are those of the table, each once", () => {
    expect(DEVICE_CLASSES.map((each) => each.id).sort()).toEqual(compiled.map((each) => each.name).sort());
  });

  for (const check of compiled) {
    it(`${check.name} holds the figures of the table`, () => {
      const deviceClass = deviceClassById(check.name);
      if (!deviceClass) throw new Error("missing");
      const { value, low, high } = deviceClass.powerFactor;
      compareWithCase(check, {
        nominalV: deviceClass.nominalVoltageV,
        powerFactor: [value, low, high],
        watts: deviceClass.settings.flatMap((each) => [each.powerW, each.lowW, each.highW]),
      });
      expect(deviceClass.isContact).toBe(check.inputs.kind === "contact-heater");
    });
  }

  for (const deviceClass of DEVICE_CLASSES) {
    it(`${deviceClass.id} has sources, ordered ranges and settings that fit its kind`, () => {
      expect(deviceClass.id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(classSourceText(deviceClass).length).toBeGreaterThan(10);
      const factor = deviceClass.powerFactor;
      expect(factor.low > 0 && factor.low <= factor.value && factor.value <= factor.high && factor.high <= 1).toBe(
        true,
      );
      for (const each of deviceClass.settings) {
        expect(each.lowW >= 0 && each.lowW <= each.powerW && each.powerW <= each.highW).toBe(true);
      }
      const names = deviceClass.settings.map((each) => each.name);
      expect(new Set(names).size).toBe(names.length);
      expect(names[0]).toBe("off");
      expect(names.some((each) => each.endsWith(deviceClass.kind === "personal-fan" ? "-heat" : "-speed"))).toBe(false);
    });
  }
});
