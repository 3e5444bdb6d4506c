import { describe, expect, it } from "vitest";
import { seededRandom, seedFromText } from "@/lib/statistics/random";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

const draw = (seed: number, count: number): number[] => {
  const next = seededRandom(seed);
  return Array.from({ length: count }, next);
};

describe("seeded generator", () => {
  for (const check of loadCheckValues<{ seed: number }>("statistics/mulberry32").cases) {
    it(`gives the published sequence for ${check.name}`, () => {
      compareWithCase(check, { values: draw(check.inputs.seed, 5) });
    });
  }

  it("repeats its sequence for a seed and differs between seeds", () => {
    expect(draw(42, 100)).toEqual(draw(42, 100));
    expect(draw(42, 100)).not.toEqual(draw(43, 100));
  });

  it("fills 100 classes evenly", () => {
    for (const seed of [1, 2026, 0xffffffff]) {
      const count = 100_000;
      const classes = new Array<number>(100).fill(0);
      const values = draw(seed, count);
      expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
      for (const value of values) {
        const index = Math.floor(value * 100);
        classes[index] = (classes[index] ?? 0) + 1;
      }
      const chiSquare = classes.reduce((sum, each) => sum + (each - count / 100) ** 2 / (count / 100), 0);
      // 0.05 % and 99.95 % points of chi-square with 99 degrees of freedom: 59.12 and 151.94 (scipy 1.17.1).
      expect(chiSquare).toBeGreaterThan(59.12);
      expect(chiSquare).toBeLessThan(151.94);
    }
  });

  it("shows no tie between one draw and the next, or between neighbouring seeds", () => {
    const values = draw(7, 50_000);
    expect(Math.abs(correlation(values.slice(0, -1), values.slice(1)))).toBeLessThan(0.02);
    expect(Math.abs(correlation(draw(7, 50_000), draw(8, 50_000)))).toBeLessThan(0.02);
  });
});

describe("seed of a name", () => {
  // FNV-1a, 32 bits: test vectors of the published reference code (from memory).
  it.each([
    ["", 0x811c9dc5],
    ["a", 0xe40c292c],
    ["foobar", 0xbf9cf968],
  ])("of %o is the published hash", (text, hash) => {
    expect(seedFromText(text)).toBe(hash);
  });
});

function correlation(a: number[], b: number[]): number {
  const centre = (values: number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
  const [meanA, meanB] = [centre(a), centre(b)];
  let both = 0;
  let squaresA = 0;
  let squaresB = 0;
  for (const [index, value] of a.entries()) {
    const other = (b[index] ?? 0) - meanB;
    both += (value - meanA) * other;
    squaresA += (value - meanA) ** 2;
    squaresB += other ** 2;
  }
  return both / Math.sqrt(squaresA * squaresB);
}
