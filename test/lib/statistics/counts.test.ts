import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { binomialAtLeast, binomialAtMost, shareInterval } from "@/lib/statistics/binomial";
import { poissonAtMost, poissonInterval } from "@/lib/statistics/poisson";

describe("the exact interval of a count", () => {
  it("holds the mean in at least as many cases as it says", () => {
    const seen = fc.record({ events: fc.integer({ min: 0, max: 400 }), confidence: fc.constantFrom(0.8, 0.9, 0.95) });
    fc.assert(
      fc.property(seen, ({ events, confidence }) => {
        const { low, high } = poissonInterval(events, confidence);
        expect(low).toBeLessThanOrEqual(events);
        expect(high).toBeGreaterThan(events);
        expect(poissonAtMost(events, high)).toBeCloseTo((1 - confidence) / 2, 6);
      }),
    );
  });
});

describe("the exact interval of a share", () => {
  it("reaches the ends where all or none were seen", () => {
    expect(shareInterval(0, 10, 0.95).low).toBe(0);
    expect(shareInterval(10, 10, 0.95).high).toBe(1);
    expect(binomialAtMost(3, 10, 0.3) + binomialAtLeast(4, 10, 0.3)).toBeCloseTo(1, 12);
  });
});
