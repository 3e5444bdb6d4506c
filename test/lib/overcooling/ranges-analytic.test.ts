import { expect, test } from "vitest";
import { spreadOf } from "@/lib/overcooling/calculation/contributions";
import { exact, type Input, step, sum } from "@/lib/overcooling/calculation/quantity";
import { runStudy } from "@/lib/overcooling/calculation/study";
import { mean, sampleDeviation } from "@/lib/statistics/moments";
import { triangularDeviation, triangularMean, triangularQuantile } from "@/lib/statistics/triangular";

const uncertain = (id: string, [low, value, high]: [number, number, number]): Input => ({
  ...exact({ symbol: id, label: id, unit: "", value, origin: "default" }),
  id,
  low,
  high,
});
const shape = ({ low, value, high }: Input) => ({ low, mode: value, high });
const product = (a: Input, b: Input) =>
  step({ symbol: "p", label: "p", unit: "", formula: "p = a * b", terms: [a, b], compute: (x, y) => x * y });

// The distribution of a rising function of one input is that function of the input's distribution: exact.
test("P10, P50 and P90 of a figure with one uncertain input are those of its triangle, carried through", () => {
  const a = uncertain("a", [1, 2, 6]);
  const cubed = step({ symbol: "c", label: "c", unit: "", formula: "c = a^3", terms: [a], compute: (x) => x ** 3 });
  const { p10, p50, p90 } = spreadOf(runStudy([cubed], { seed: 5, draws: 40_000 }).draws(cubed));
  const exactly = [0.1, 0.5, 0.9].map((u) => triangularQuantile(shape(a), u) ** 3) as [number, number, number];
  // Standard error of a rank at 40,000 draws: at most 0.25 % of probability.
  for (const [k, got] of [p10, p50, p90].entries()) {
    const near = (u: number) => triangularQuantile(shape(a), u) ** 3;
    const at = [0.1, 0.5, 0.9][k] as number;
    expect(got).toBeGreaterThan(near(at - 0.01));
    expect(got).toBeLessThan(near(at + 0.01));
  }
  expect(p50).toBeCloseTo(exactly[1], 0);
});

// Independent inputs: E(ab) = E(a)E(b); Var(ab) = Var(a)Var(b) + Var(a)E(b)² + Var(b)E(a)². Sums add means and variances.
test("means and deviations of products and sums of independent inputs are those of probability theory", () => {
  const [a, b] = [uncertain("a", [0.5, 1, 3]), uncertain("b", [2, 5, 6])];
  const p = product(a, b);
  const s = sum({
    symbol: "s",
    label: "s",
    unit: "",
    formula: "s = a + b",
    parts: [a, b].map((quantity) => ({ symbol: quantity.symbol, label: quantity.label, quantity })),
  });
  const draws = 60_000;
  const study = runStudy([p, s], { seed: 8, draws });
  const [ma, mb] = [triangularMean(shape(a)), triangularMean(shape(b))];
  const [va, vb] = [triangularDeviation(shape(a)) ** 2, triangularDeviation(shape(b)) ** 2];
  const expected = [
    { quantity: p, mean: ma * mb, deviation: Math.sqrt(va * vb + va * mb ** 2 + vb * ma ** 2) },
    { quantity: s, mean: ma + mb, deviation: Math.sqrt(va + vb) },
  ];
  for (const each of expected) {
    const values = study.draws(each.quantity);
    expect(Math.abs(mean(values) - each.mean)).toBeLessThan((4 * each.deviation) / Math.sqrt(draws));
    expect(Math.abs(sampleDeviation(values) / each.deviation - 1)).toBeLessThan(0.02);
  }
});

test("what two figures share moves both by the same draws: a difference keeps none of it", () => {
  const [shared, own] = [uncertain("shared", [10, 20, 40]), uncertain("own", [0, 1, 2])];
  const [before, after] = [product(shared, own), product(shared, { ...own, id: "other", value: 1, low: 1, high: 1 })];
  const study = runStudy([before, after, own], { seed: 1, draws: 500 });
  study.draws(before).forEach((each, i) => {
    const ratio = each / (study.draws(after)[i] as number);
    expect(ratio).toBeCloseTo(study.draws(own)[i] as number, 12);
  });
});
