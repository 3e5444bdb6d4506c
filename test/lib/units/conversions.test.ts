import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cfmFromM3ps, M3PS_PER_CFM, m3psFromCfm, m3psFromLps, m3psFromM3ph } from "@/lib/units/airflow";
import { ft2FromM2, M2_PER_FT2, m2FromFt2 } from "@/lib/units/area";
import {
  BTUH_PER_W,
  copFromEer,
  copFromKwPerTon,
  eerFromKwPerTon,
  KW_PER_TON,
  KWH_PER_THERM,
  kwhFromTherms,
  thermsFromKwh,
} from "@/lib/units/energy";
import {
  celsiusFromFahrenheit,
  celsiusFromKelvin,
  fahrenheitDifferenceFromKelvin,
  fahrenheitFromCelsius,
  kelvinFromCelsius,
  kelvinFromFahrenheitDifference,
} from "@/lib/units/temperature";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

describe("conversion factors", () => {
  const factors: Record<string, number> = {
    ft2: M2_PER_FT2,
    cfm: M3PS_PER_CFM,
    therm: KWH_PER_THERM,
    ton: KW_PER_TON,
    "w-in-btuh": BTUH_PER_W,
  };
  for (const check of loadCheckValues<{ unit: string }>("units/conversion-factors").cases) {
    it(check.name, () => compareWithCase(check, { factor: factors[check.inputs.unit] ?? Number.NaN }));
  }

  for (const check of loadCheckValues<{ kW_per_ton: number[] }>("units/cooling-efficiency").cases) {
    it("cooling efficiency in kW per ton, COP and EER", () => {
      const { kW_per_ton } = check.inputs;
      compareWithCase(check, { COP: kW_per_ton.map(copFromKwPerTon), EER: kW_per_ton.map(eerFromKwPerTon) });
      for (const each of kW_per_ton) {
        expect(copFromEer(eerFromKwPerTon(each)) / copFromKwPerTon(each)).toBeCloseTo(1, 5);
      }
    });
  }

  for (const check of loadCheckValues<{ IP: number }>("units/air-constant").cases) {
    it("1.08 Btu/h·cfm·°F of sensible heat in Wh/m³K", () => {
      const whPerM3K = check.inputs.IP / BTUH_PER_W / (m3psFromCfm(1) * 3600) / kelvinFromFahrenheitDifference(1);
      compareWithCase(check, { Wh_per_m3K_from_1p08: whPerM3K });
    });
  }
});

describe("temperatures", () => {
  it.each([
    [-40, -40],
    [0, 32],
    [100, 212],
    [37, 98.6],
    [23, 73.4],
  ])("%s °C is %s °F", (tempC, tempF) => {
    expect(fahrenheitFromCelsius(tempC)).toBeCloseTo(tempF, 10);
    expect(celsiusFromFahrenheit(tempF)).toBeCloseTo(tempC, 10);
  });

  it("puts absolute zero at -273.15 °C", () => expect(celsiusFromKelvin(0)).toBe(-273.15));

  it("converts a difference without the 32 of the scale", () => {
    expect(fahrenheitDifferenceFromKelvin(1)).toBe(1.8);
    expect(kelvinFromFahrenheitDifference(9)).toBe(5);
    const temp = fc.double({ min: -60, max: 60, noNaN: true });
    fc.assert(
      fc.property(temp, temp, (a, b) => {
        const steps = fahrenheitDifferenceFromKelvin(a - b);
        expect(fahrenheitFromCelsius(a) - fahrenheitFromCelsius(b)).toBeCloseTo(steps, 9);
      }),
    );
  });
});

describe("there and back", () => {
  it.each<[string, (value: number) => number, (value: number) => number]>([
    ["°F", fahrenheitFromCelsius, celsiusFromFahrenheit],
    ["K", kelvinFromCelsius, celsiusFromKelvin],
    ["°F of a difference", fahrenheitDifferenceFromKelvin, kelvinFromFahrenheitDifference],
    ["ft²", ft2FromM2, m2FromFt2],
    ["cfm", cfmFromM3ps, m3psFromCfm],
    ["therms", thermsFromKwh, kwhFromTherms],
  ])("%s", (_, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        expect(Math.abs(back(there(value)) - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
      }),
    );
  });

  it("agrees between litres a second and cubic metres an hour", () => {
    expect(m3psFromLps(1000)).toBe(1);
    expect(m3psFromM3ph(3600)).toBe(1);
  });
});
