import { describe, expect, it } from "vitest";
import {
  formatArea,
  formatEnergyKwh,
  formatNumber,
  formatPowerW,
  formatQuantity,
  formatTemperature,
  formatTemperatureDifference,
} from "@/lib/units/format";

describe("numbers as printed", () => {
  it.each([
    [1234.4, { decimals: 0 }, "1,234"],
    [12345.67, { decimals: 1 }, "12,345.7"],
    [1234567, { decimals: 0 }, "1,234,567"],
    [1372.8, { significantDigits: 3 }, "1,370"],
    [0.012345, { significantDigits: 2 }, "0.012"],
    [-3.24, { decimals: 1 }, "\u22123.2"],
    [-0.04, { decimals: 1 }, "0.0"],
    [23, { decimals: 1 }, "23.0"],
  ] as const)("%s with %o", (value, digits, text) => {
    expect(formatNumber(value, digits)).toBe(text);
  });

  it("throws on what is not a number instead of printing it", () => {
    expect(() => formatNumber(Number.NaN, { decimals: 1 })).toThrow(RangeError);
    expect(() => formatNumber(Number.POSITIVE_INFINITY, { decimals: 1 })).toThrow(RangeError);
  });
});

describe("quantities as printed", () => {
  it("keeps the unit on the line of its number", () => {
    expect(formatQuantity(2.5, "m/s", { decimals: 1 })).toEqual({ value: "2.5", unit: "m/s", text: "2.5\u00a0m/s" });
    expect(formatQuantity(0.5, "", { decimals: 1 }).text).toBe("0.5");
  });

  it("prints a temperature and a difference by different rules", () => {
    expect(formatTemperature(23, "C").text).toBe("23.0\u00a0°C");
    expect(formatTemperature(23, "F").text).toBe("73.4\u00a0°F");
    expect(formatTemperatureDifference(1.5, "C").text).toBe("1.5\u00a0K");
    expect(formatTemperatureDifference(1.5, "F").text).toBe("2.7\u00a0°F");
  });

  it("prints areas, energy and power with digits by size", () => {
    expect(formatArea(10, "m2").text).toBe("10.0\u00a0m²");
    expect(formatArea(4645.152, "ft2").text).toBe("50,000\u00a0ft²");
    expect(formatEnergyKwh(57.6).text).toBe("57.6\u00a0kWh");
    expect(formatEnergyKwh(2155.2).text).toBe("2,155\u00a0kWh");
    expect(formatEnergyKwh(7.488).text).toBe("7.49\u00a0kWh");
    expect(formatPowerW(9.999).text).toBe("10.0\u00a0W");
    expect(formatPowerW(99.96).text).toBe("100\u00a0W");
    expect(formatPowerW(0).text).toBe("0\u00a0W");
    expect(formatPowerW(1077.6, { significantDigits: 2 }).text).toBe("1,100\u00a0W");
  });
});
