import fc from "fast-check";
import { expect, test } from "vitest";
import { isAscending, timeOrder } from "@/lib/order/time-order";

const byComparison = (ts: number[]): number[] =>
  ts.map((_, i) => i).sort((a, b) => (ts[a] as number) - (ts[b] as number) || a - b);

const times = { near: fc.integer({ min: 0, max: 20 }), far: fc.integer({ min: -9e9, max: 9e9 }) };

test.each([
  ["whole times with repeats", times.near],
  ["whole times over centuries", times.far],
  ["times with fractions", times.near.map((time) => time / 8)],
])("%s: the order is that of a stable sort", (_, time) => {
  fc.assert(
    fc.property(fc.array(time, { maxLength: 80 }), (ts) => {
      expect([...timeOrder(Float64Array.from(ts))]).toEqual(byComparison(ts));
    }),
    { numRuns: 300, seed: 11 },
  );
});

test("so many times over so long a stretch that time and index do not fit one double", () => {
  const count = 1_000_000;
  const order = timeOrder(Float64Array.from({ length: count }, (_, i) => 9_500_000_000 - i * 9_100));
  expect([order[0], order[count - 1]]).toEqual([count - 1, 0]);
});

test("times ascend when none comes twice and none comes before another", () => {
  const ascends = (...ts: number[]) => isAscending(Float64Array.from(ts));
  expect([ascends(), ascends(1), ascends(1, 2, 3), ascends(1, 2, 2), ascends(2, 1)]).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
});
