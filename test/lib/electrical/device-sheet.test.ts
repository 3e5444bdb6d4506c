import { describe, expect, it } from "vitest";
import { deviceSheet, type SheetInput, type SheetSetting } from "@/lib/electrical/device-sheet";

const setting = (changes: Partial<SheetSetting> = {}): SheetSetting => ({
  name: "high-heat",
  basis: "clamp",
  currentA: 11.44,
  currentResolutionA: 0.01,
  voltageV: 120,
  voltageMeasured: true,
  powerFactor: 1,
  powerW: null,
  hoursPerYear: 2000,
  dutyFraction: 1,
  ...changes,
});

const sheetOf = (settings: SheetSetting[], changes: Partial<SheetInput> = {}) =>
  deviceSheet({
    kind: "space-heater",
    deviceClassId: "fan-heater-1500",
    settings,
    price: { pricePerKwh: 0.13, currency: "USD", origin: "entered" },
    ...changes,
  });

describe("a measurement sheet", () => {
  /*
   * Measured settings of common practice, no source: 0.24, 8.98 and 11.44 A at 120 V for 2,000 h a year at 0.13 per kWh
   * give 28.8, 1077.6 and 1372.8 W, 57.6, 2155 and 2746 kWh, and 7.49, 280 and 357. Tolerances: half the last digit.
   */
  it.each([
    ["fan-only", 0.24, 28.8, 57.6, 7.49],
    ["low-heat", 8.98, 1077.6, 2155, 280],
    ["high-heat", 11.44, 1372.8, 2746, 357],
  ])("%s: %d A at 120 V", (name, currentA, powerW, energyKwh, cost) => {
    const [line] = sheetOf([setting({ name, currentA, powerFactor: name === "fan-only" ? null : 1 })]).lines;
    if (line?.power.status !== "ok") throw new Error("no power");
    expect(Math.abs(line.power.powerW.value - powerW)).toBeLessThanOrEqual(0.05);
    expect(Math.abs((line.energyKwh?.value ?? 0) - energyKwh)).toBeLessThanOrEqual(energyKwh > 100 ? 0.5 : 0.05);
    expect(Math.abs((line.cost?.value ?? 0) - cost)).toBeLessThanOrEqual(cost > 100 ? 0.5 : 0.005);
    expect(line.power.isUpperBound).toBe(name === "fan-only");
  });

  it("adds up energy and cost over the settings, and its range with them", () => {
    const settings = [setting({ hoursPerYear: 100 }), setting({ name: "low-heat", currentA: 6, hoursPerYear: 300 })];
    const { lines, energy, totalCost } = sheetOf(settings);
    if (energy.status !== "ok") throw new Error(energy.message);
    for (const part of ["value", "low", "high"] as const) {
      const parts = lines.map((line) => [line.energyKwh?.[part] ?? 0, line.cost?.[part] ?? 0]);
      expect(energy.totalKwh[part]).toBeCloseTo(
        parts.reduce((sum, [kwh]) => sum + (kwh ?? 0), 0),
        9,
      );
      expect(totalCost?.[part]).toBeCloseTo(
        parts.reduce((sum, [, cost]) => sum + (cost ?? 0), 0),
        9,
      );
    }
    // By hand: (11.44 * 100 + 6 * 300) * 120 / 1000 = 353.28 kWh.
    expect(energy.totalKwh.value).toBeCloseTo(353.28, 9);
    expect(energy.unassignedHours).toBe(8760 - 400);
  });

  it("works each figure from the one before, down to the readings, and ends where the line does", () => {
    const [line] = sheetOf([setting({ hoursPerYear: 400, dutyFraction: 0.5 })]).lines;
    const { power, energy, cost } = line?.workings ?? {};
    expect(cost?.result.value).toBe(line?.cost?.value);
    expect(energy?.result.value).toBe(line?.energyKwh?.value);
    expect(cost?.terms.find((term) => term.symbol === "E")?.working).toEqual(energy);
    expect(energy?.terms.find((term) => term.symbol === "P")?.working).toEqual(power);
    const product = power?.terms.reduce((result, term) => result * term.value, 1);
    expect(product).toBeCloseTo(line?.power.status === "ok" ? line.power.powerW.value : 0, 9);
  });

  it("leaves out a setting whose power is not known, and says which", () => {
    const { lines, energy } = sheetOf([setting(), setting({ name: "low-heat", currentA: null, hoursPerYear: 50 })]);
    expect(lines[1]).toMatchObject({ energyKwh: null, cost: null, workings: null });
    expect(lines[1]?.power).toMatchObject({ status: "refused", code: "current-missing" });
    expect(energy).toMatchObject({ status: "ok", leftOut: ["low-heat"] });
  });

  it("has no energy when the settings are selected for more hours than a year has", () => {
    const { energy, lines, totalCost } = sheetOf([setting({ hoursPerYear: 8000 }), setting({ hoursPerYear: 761 })]);
    expect(energy).toMatchObject({ status: "refused", code: "hours-over-year" });
    expect(lines.map((line) => [line.power.status, line.energyKwh])).toEqual([
      ["ok", null],
      ["ok", null],
    ]);
    expect(totalCost).toBeNull();
  });

  it("takes the usual power of the class where nothing was measured", () => {
    const usual = setting({ basis: "class-default", currentA: null, voltageV: null, powerFactor: null });
    const { lines, highPowerW } = sheetOf([usual, setting({ name: "fan-only", currentA: 0.24 })]);
    const [line] = lines;
    expect(line?.power).toMatchObject({ status: "ok", basis: "class-default" });
    expect(line?.workings?.power.terms[0]?.origin).toBe("default");
    expect(highPowerW).toBe(line?.power.status === "ok" ? line.power.powerW.value : -1);
  });
});
