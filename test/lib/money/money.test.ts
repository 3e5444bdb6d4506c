import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocateRounded } from "@/lib/money/allocate";
import { formatMoney, formatRate } from "@/lib/money/format";
import { amountFromMoney, currencyDecimals, isCurrency, moneyFromAmount, roundHalfEven } from "@/lib/money/money";

describe("rounding half to even", () => {
  // IEEE 754-2019, 4.3.1, roundTiesToEven.
  it.each([
    [0.5, 0],
    [1.5, 2],
    [2.5, 2],
    [3.5, 4],
    [-0.5, 0],
    [-1.5, -2],
    [-2.5, -2],
    [2.4999, 2],
    [2.5001, 3],
    [-2.6, -3],
  ])("%s gives %s", (value, rounded) => {
    expect(roundHalfEven(value) + 0).toBe(rounded);
  });

  it("sees a tie behind binary fractions", () => {
    expect(moneyFromAmount(1.005, "USD").minorUnits).toBe(100);
    expect(moneyFromAmount(1.015, "USD").minorUnits).toBe(102);
    expect(moneyFromAmount(1.025, "USD").minorUnits).toBe(102);
  });

  it("is never further than half a unit from its value", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        expect(Math.abs(roundHalfEven(value) - value)).toBeLessThanOrEqual(0.5 + 1e-9);
      }),
    );
  });
});

describe("currencies", () => {
  // ISO 4217, minor units.
  it.each([
    ["USD", 2],
    ["EUR", 2],
    ["JPY", 0],
    ["KWD", 3],
  ])("%s has %s decimals", (currency, decimals) => {
    expect(currencyDecimals(currency)).toBe(decimals);
    expect(amountFromMoney(moneyFromAmount(1234, currency))).toBe(1234);
    expect(moneyFromAmount(1, currency).minorUnits).toBe(10 ** decimals);
  });

  it("knows codes from other words", () => {
    expect(isCurrency("EUR")).toBe(true);
    expect(isCurrency("eur")).toBe(false);
    expect(isCurrency("QQQ")).toBe(false);
  });
});

describe("parts of a printed total", () => {
  const amounts = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

  it("add up to the rounded total, each within one unit of its own value", () => {
    fc.assert(
      fc.property(amounts, (parts) => {
        const rounded = allocateRounded(parts);
        expect(rounded.every(Number.isInteger)).toBe(true);
        expect(rounded.reduce((sum, part) => sum + part, 0)).toBe(
          Math.round(parts.reduce((sum, part) => sum + part, 0)) + 0,
        );
        for (const [index, part] of parts.entries()) expect(Math.abs((rounded[index] ?? NaN) - part)).toBeLessThan(1);
      }),
    );
  });

  it("add up to a total given from outside", () => {
    fc.assert(
      fc.property(amounts, fc.integer({ min: -100, max: 100 }), (parts, shift) => {
        const total = Math.round(parts.reduce((sum, part) => sum + part, 0)) + shift;
        expect(allocateRounded(parts, total).reduce((sum, part) => sum + part, 0)).toBe(total + 0);
      }),
    );
  });

  it("give the units left over to the largest fractions", () => {
    expect(allocateRounded([33.4, 33.4, 33.2])).toEqual([34, 33, 33]);
    expect(allocateRounded([0.2, 0.7, 0.1])).toEqual([0, 1, 0]);
    expect(allocateRounded([])).toEqual([]);
  });
});

describe("money as printed", () => {
  it("shows minor units, or whole ones for an estimate", () => {
    expect(formatMoney({ minorUnits: 749, currency: "USD" })).toBe("$7.49");
    expect(formatMoney({ minorUnits: 28017, currency: "USD" }, { whole: true })).toBe("$280");
    expect(formatMoney({ minorUnits: 123456, currency: "USD" })).toBe("$1,234.56");
    expect(formatMoney({ minorUnits: 1234567, currency: "EUR" })).toBe("€12,345.67");
    expect(formatMoney({ minorUnits: -1250, currency: "GBP" })).toBe("\u2212£12.50");
    expect(formatMoney({ minorUnits: 28500, currency: "JPY" })).toBe("¥28,500");
    expect(formatMoney({ minorUnits: -20, currency: "USD" }, { whole: true })).toBe("$0");
  });

  it("shows a rate with the decimals it has", () => {
    expect(formatRate({ amount: 0.13, currency: "USD", per: "kWh" })).toBe("$0.13\u00a0per\u00a0kWh");
    expect(formatRate({ amount: 0.12754, currency: "EUR", per: "kWh" })).toBe("€0.1275\u00a0per\u00a0kWh");
    expect(formatRate({ amount: 31, currency: "JPY", per: "kWh" })).toBe("¥31\u00a0per\u00a0kWh");
  });
});
