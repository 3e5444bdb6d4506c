import { describe, expect, it } from "vitest";
import { formatFigure, rangeFigures, rangeWords } from "@/app/_components/quantity/format-figure";
import { currencySign } from "@/app/_components/quantity/money-figure";

describe("figures", () => {
  it.each([
    [1234.56, undefined, "1,230"],
    [4711, undefined, "4,711"],
    [123456.7, undefined, "123,000"],
    [1.2, { significant: 4 }, "1.2"],
    [0.02468, undefined, "0.0247"],
    [-2.5, { decimals: 1 }, "\u22122.5"],
    [-0.04, { decimals: 1 }, "0.0"],
    [23, { decimals: 1 }, "23.0"],
    [0, undefined, "0"],
  ] as const)("%d is shown as its digits allow", (value, digits, text) => {
    expect(formatFigure(value, digits)).toBe(text);
  });
});

describe("ranges", () => {
  it("are written as a span and the most likely figure", () => {
    expect(rangeWords({ p10: 4512, p50: 5219, p90: 5987 }, { per: "a year" })).toBe(
      "4,500\u20136,000 a year, most likely 5,200",
    );
    expect(rangeWords({ p10: 4512, p50: 5219, p90: 5987 }, { prefix: "$", per: "a year" })).toBe(
      "$4,500\u20136,000 a year, most likely $5,200",
    );
  });

  it("keep the digits that their width earns", () => {
    expect(rangeFigures({ p10: 0.412, p50: 0.466, p90: 0.538 })).toEqual({ low: "0.41", middle: "0.47", high: "0.54" });
    expect(rangeFigures({ p10: 12_340, p50: 12_345, p90: 12_352 })).toEqual({
      low: "12,340",
      middle: "12,345",
      high: "12,352",
    });
  });

  it("put the sign of the currency after the minus", () => {
    expect(rangeWords({ p10: -420, p50: 310, p90: 1100 }, { prefix: "$", per: "a year" })).toBe(
      "\u2212$400 to $1,100 a year, most likely $300",
    );
  });

  it("use a word where a dash would meet a minus, and one figure where there is no width", () => {
    expect(rangeWords({ p10: -0.4, p50: 0.3, p90: 1.1 }, { unit: "K" })).toBe("\u22120.4 to 1.1 K, most likely 0.3");
    expect(rangeWords({ p10: 0, p50: 0, p90: 0 }, { unit: "kWh" })).toBe("0 kWh, most likely 0");
  });
});

describe("the sign of a currency", () => {
  it("stands close when it is a sign and apart when it is a code", () => {
    expect(currencySign("USD")).toBe("$");
    expect(currencySign("EUR")).toBe("€");
    expect(currencySign("KWD")).toBe("KWD\u202f");
  });
});
