import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { binomialAtLeast, binomialAtMost, shareInterval } from "@/lib/statistics/binomial";
import { poissonAtMost, poissonInterval } from "@/lib/statistics/poisson";
import { powerToShow, rateRatio } from "@/lib/statistics/rate-ratio";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

describe("the exact interval of a count", () => {
  type Inputs = { events: number; exposure?: number; confidence: number };
  for (const check of loadCheckValues<Inputs>("statistics/poisson-interval").cases)
    it(check.name, () => {
      const { events, exposure = 1, confidence } = check.inputs;
      const { low, high } = poissonInterval(events, confidence);
      compareWithCase(check, { rate: events / exposure, lower: low / exposure, upper: high / exposure });
    });

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
  for (const check of loadCheckValues<{ successes: number; n: number; confidence: number }>("statistics/share-interval")
    .cases)
    it(check.name, () => {
      const { low, high } = shareInterval(check.inputs.successes, check.inputs.n, check.inputs.confidence);
      compareWithCase(check, { lower: low, upper: high });
    });

  it("reaches the ends where all or none were seen", () => {
    expect(shareInterval(0, 10, 0.95).low).toBe(0);
    expect(shareInterval(10, 10, 0.95).high).toBe(1);
    expect(binomialAtMost(3, 10, 0.3) + binomialAtLeast(4, 10, 0.3)).toBeCloseTo(1, 12);
  });
});

describe("two rates", () => {
  type Inputs = { events1: number; events2: number; exposure1: number; exposure2: number; confidence: number };
  for (const check of loadCheckValues<Inputs>("statistics/rate-ratio").cases)
    it(check.name, () => {
      const { events1, events2, exposure1, exposure2, confidence } = check.inputs;
      const found = rateRatio(
        { events: events1, exposure: exposure1 },
        { events: events2, exposure: exposure2 },
        confidence,
      );
      compareWithCase(check, {
        ratio: found.ratio ?? "none",
        lower: found.low,
        upper: found.high ?? "none",
        pCentral: found.pCentral,
        pMinLikelihood: found.pMinLikelihood,
      });
    });

  for (const check of loadCheckValues<{ ratio: number; expectedBefore: number }>("statistics/power-to-show").cases)
    it(check.name, () => compareWithCase(check, { power: powerToShow(check.inputs) }));
});
