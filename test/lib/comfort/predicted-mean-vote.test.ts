import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { predictedPercentDissatisfied } from "@/lib/comfort/percent-dissatisfied";
import { predictedMeanVote, voteOf } from "@/lib/comfort/predicted-mean-vote";
import { conditionOf } from "./conditions";

const officeAt = (tempC: number, clo = 0.5, met = 1.1) =>
  conditionOf({ ta: tempC, tr: tempC, vr: 0.1, rh: 50, met, clo });

describe("the predicted mean vote", () => {
  it("names each limit that is broken, with its range", () => {
    const vote = predictedMeanVote({ ...officeAt(24), airTempC: 45, relHumidityPct: 150 });
    expect(vote).toMatchObject({
      status: "outside-limits",
      limits: [
        { what: "air temperature", value: 45, low: 10, high: 40, unit: "°C" },
        { what: "relative humidity", value: 150, low: 0, high: 100, unit: "%" },
      ],
    });
    expect(predictedMeanVote({ ...officeAt(24), airTempC: Number.NaN }).status).toBe("outside-limits");
  });

  it("is refused by ISO 7730 beyond two on its scale", () => {
    expect(predictedMeanVote(officeAt(14), "iso-7730").status).toBe("outside-limits");
    expect(predictedMeanVote(officeAt(14), "ashrae-55").status).toBe("ok");
  });

  it("rises with the air, with activity and with humidity, and leaves at least 5 % dissatisfied", () => {
    const office = fc.record({
      tempC: fc.double({ min: 15, max: 29, noNaN: true }),
      clo: fc.double({ min: 0.3, max: 1.2, noNaN: true }),
      met: fc.double({ min: 1, max: 1.6, noNaN: true }),
    });
    fc.assert(
      fc.property(office, ({ tempC, clo, met }) => {
        const { pmv } = voteOf(officeAt(tempC, clo, met));
        expect(voteOf(officeAt(tempC + 0.5, clo, met)).pmv).toBeGreaterThan(pmv);
        expect(voteOf({ ...officeAt(tempC, clo, met), relHumidityPct: 70 }).pmv).toBeGreaterThan(pmv);
        expect(predictedPercentDissatisfied(pmv)).toBeGreaterThanOrEqual(5);
        expect(predictedPercentDissatisfied(-pmv)).toBeCloseTo(predictedPercentDissatisfied(pmv), 10);
      }),
    );
  });
});
