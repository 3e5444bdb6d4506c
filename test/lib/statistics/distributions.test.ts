import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mean, sampleDeviation } from "@/lib/statistics/moments";
import { median, quantileOfSorted, quantiles } from "@/lib/statistics/quantile";
import {
  type Triangular,
  triangularDeviation,
  triangularMean,
  triangularQuantile,
  triangularQuantiles,
} from "@/lib/statistics/triangular";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

describe("quantiles", () => {
  for (const check of loadCheckValues<{ values: number[]; ps: number[] }>("statistics/quantiles").cases) {
    it(check.name, () => compareWithCase(check, { quantiles: quantiles(check.inputs.values, check.inputs.ps) }));
  }

  it("leave their input as it was and lie within it", () => {
    const values = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 });
    fc.assert(
      fc.property(values, fc.double({ min: 0, max: 1, noNaN: true }), (given, p) => {
        const before = [...given];
        const [quantile = Number.NaN] = quantiles(given, [p]);
        expect(given).toEqual(before);
        expect(quantile).toBeGreaterThanOrEqual(Math.min(...given) - 1e-6);
        expect(quantile).toBeLessThanOrEqual(Math.max(...given) + 1e-6);
      }),
    );
  });

  it("give the median of an even count between the middle two", () => expect(median([4, 1, 3, 2])).toBe(2.5));
  it("need a value", () => expect(() => quantileOfSorted([], 0.5)).toThrow(RangeError));
});

describe("mean and deviation", () => {
  it("agree with R's t.test on twenty daily energies", () => {
    const [check] = loadCheckValues<{ values: number[] }>("statistics/quantiles").cases;
    // Mean 2.34 and deviation 1.526054: numpy 1.24.2, cross-checked with R 4.2.2.
    expect(mean(check?.inputs.values ?? [])).toBeCloseTo(2.34, 9);
    expect(sampleDeviation(check?.inputs.values ?? [])).toBeCloseTo(1.526054, 6);
  });
  it("need their values", () => {
    expect(() => mean([])).toThrow(RangeError);
    expect(() => sampleDeviation([1])).toThrow(RangeError);
  });
});

describe("triangular distribution", () => {
  for (const check of loadCheckValues<Triangular & { us: number[] }>("statistics/triangular").cases) {
    it(check.name, () => {
      const { us, ...shape } = check.inputs;
      compareWithCase(check, {
        quantiles: us.map((u) => triangularQuantile(shape, u)),
        mean: triangularMean(shape),
        deviation: triangularDeviation(shape),
      });
    });
  }

  it("has the variance a²/6 of JCGM 100:2008, 4.3.9, when it is symmetric", () => {
    expect(triangularDeviation({ low: 7, mode: 10, high: 13 }) ** 2).toBeCloseTo(9 / 6, 12);
  });

  it("is its mode when it has no width", () => {
    expect(triangularQuantile({ low: 5, mode: 5, high: 5 }, 0.9)).toBe(5);
    expect(triangularDeviation({ low: 5, mode: 5, high: 5 })).toBe(0);
  });

  it("has the same quantiles many at a time, at its ends and its mode as between", () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(unit, { minLength: 1 }), fc.constantFrom(0, 0.2, 0.5, 1), (given, share) => {
        const shape = { low: -3, mode: -3 + 8 * share, high: 5 };
        const us = [...given, 0, 2 ** -32, share, 1];
        const values = Float64Array.of(...us, 77);
        triangularQuantiles(shape, values, us.length);
        us.forEach((u, i) => {
          // A root of what rounding leaves of 1: √(8 · 8 · 2⁻⁵²).
          expect(Math.abs((values[i] as number) - triangularQuantile(shape, u))).toBeLessThan(2e-7);
        });
        expect(values.at(-1)).toBe(77);
      }),
    );
    const flat = Float64Array.of(0.1, 0.9);
    triangularQuantiles({ low: 5, mode: 5, high: 5 }, flat, 2);
    expect(Array.from(flat)).toEqual([5, 5]);
  });

  it("has quantiles that rise and stay within its ends", () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, unit, (a, b, share) => {
        const shape = { low: -3, mode: -3 + 8 * share, high: 5 };
        const [lower, upper] = [Math.min(a, b), Math.max(a, b)].map((u) => triangularQuantile(shape, u));
        expect(lower).toBeLessThanOrEqual((upper ?? Number.NaN) + 1e-12);
        expect(lower).toBeGreaterThanOrEqual(-3);
        expect(upper).toBeLessThanOrEqual(5);
      }),
    );
  });
});
