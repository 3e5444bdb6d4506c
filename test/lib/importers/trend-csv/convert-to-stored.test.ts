import { describe, expect, test } from "vitest";
import { type ConversionVerdict, convertToStored, TO_STORED } from "@/lib/importers/trend-csv/convert-to-stored";
import type { FileUnit, TrendPoint } from "@/lib/importers/trend-csv/trend-file";
import type { PointKind } from "@/lib/trends/point-kind";
import { m3psFromCfm, m3psFromLps, m3psFromM3ph } from "@/lib/units/airflow";
import { celsiusFromFahrenheit, celsiusFromKelvin } from "@/lib/units/temperature";

const numeric = (unit: FileUnit | null, ...values: number[]): TrendPoint => ({
  name: "P",
  kind: "numeric",
  unitAsWritten: unit,
  unit,
  sampling: "interval",
  tsUtcSeconds: Float64Array.from(values, (_, i) => 1_783_339_200 + i * 900),
  values: Float64Array.from(values),
  missing: 0,
});
const states = (...names: string[]): TrendPoint => {
  const stateNames = [...new Set(names)];
  return { ...numeric(null, ...names.map((name) => stateNames.indexOf(name))), kind: "state", stateNames };
};
function stored(verdict: ConversionVerdict) {
  if (verdict.status !== "ok") throw new Error(verdict.sentence);
  return verdict;
}

describe("units on their way to the store", () => {
  // °F and K by definition (ITS-90 scale, 32 °F = 0 °C, 212 °F = 100 °C, 0 °C = 273.15 K); cfm: 1 ft = 0.3048 m exactly.
  test.each<[PointKind, FileUnit, number, number, number]>([
    ["zone-air-temp", "degF", 32, 0, 3],
    ["zone-air-temp", "degF", 72.5, 22_500, 3],
    ["outdoor-air-temp", "kelvin", 273.15, 0, 3],
    ["cooling-setpoint", "degC", 23.5, 23_500, 3],
    ["airflow", "cfm", 1000, 47_195, 5],
    ["airflow", "m3PerHour", 3600, 100_000, 5],
    ["airflow-setpoint", "litrePerSecond", 250, 25_000, 5],
    ["reheat-valve", "percent", 55.5, 555, 1],
  ])("%s: %s %d", (kind, unit, value, scaled, decimals) => {
    const result = stored(convertToStored(numeric(unit, value), kind));
    expect([result.v[0], result.decimals]).toEqual([scaled, decimals]);
  });

  test("a unit that does not fit the kind is refused with what is needed", () => {
    const verdict = convertToStored(numeric("cfm", 300), "zone-air-temp");
    expect(verdict).toMatchObject({ status: "unit-does-not-fit" });
    expect(verdict.status === "unit-does-not-fit" && verdict.sentence).toMatch(/cfm.*temperature/);
    expect(convertToStored(numeric(null, 72), "zone-air-temp").status).toBe("unit-does-not-fit");
    expect(convertToStored(numeric("percentRH", 40), "damper-position").status).toBe("unit-does-not-fit");
    expect(convertToStored(states("On", "Off"), "zone-air-temp").status).toBe("unit-does-not-fit");
  });

  test("a confirmed unit goes before the file's", () => {
    expect(stored(convertToStored(numeric(null, 50), "zone-air-temp", "degF")).v[0]).toBe(10_000);
  });

  test("occupied and unoccupied in several spellings are 1 and 0; another word is left out and named", () => {
    const words = states("Occ", "Unocc", "Occupied", "UnOccupied", "On", "Off", "true", "false", "1", "0", "Standby");
    const result = stored(convertToStored(words, "occupancy"));
    expect([...result.v]).toEqual([1, 0, 1, 0, 1, 0, 1, 0, 1, 0]);
    expect(result.unknownStates).toBe(1);
    expect(result.findings[0]?.sentence).toBeTruthy();
    expect(result.findings[0]?.evidence).toContain("Standby");
  });

  test("implausible values are left out and counted, never clamped", () => {
    const temps = stored(convertToStored(numeric("degF", 72, -250, 150, 68), "zone-air-temp"));
    expect(temps.v.length).toBe(2);
    expect(temps.findings[0]).toMatchObject({
      code: "implausible-value",
      count: 2,
      evidence: "from -250 to 150 in the file's unit",
    });
    const damper = stored(convertToStored(numeric("percent", 100.3, -140.6, 0, 140.3), "damper-position"));
    expect([...damper.v]).toEqual([1003, 0]);
    expect(damper.ts.length).toBe(2);
  });
});

describe("the numbers of a conversion are the formulas of lib/units", () => {
  const PAIRS = [
    ["degF", TO_STORED.degC.degF, celsiusFromFahrenheit],
    ["kelvin", TO_STORED.degC.kelvin, celsiusFromKelvin],
    ["cfm", TO_STORED.m3ps.cfm, m3psFromCfm],
    ["m3PerHour", TO_STORED.m3ps.m3PerHour, m3psFromM3ph],
    ["litrePerSecond", TO_STORED.m3ps.litrePerSecond, m3psFromLps],
  ] as const;
  test.each(PAIRS)("%s, to the last bit", (_, conversion, formula) => {
    if (!conversion) throw new Error("no conversion");
    for (let value = -40; value <= 5000; value += 0.37)
      expect(((value - conversion.less) * conversion.times) / conversion.over).toBe(formula(value));
  });
});
