import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { besideRange, type FeltInputs, feltRange, type Spread } from "@/lib/comfort/felt-range";
import { voteOf } from "@/lib/comfort/predicted-mean-vote";

const exactly = (value: number): Spread => ({ low: value, middle: value, high: value });
const OFFICE: FeltInputs = {
  airTempC: { low: 22, middle: 22.5, high: 23 },
  radiantOffsetK: { low: -2, middle: 0, high: 2 },
  airSpeedMps: { low: 0.05, middle: 0.1, high: 0.2 },
  relHumidityPct: { low: 30, middle: 50, high: 60 },
  metabolicRateMet: { low: 1, middle: 1.1, high: 1.2 },
  clothingClo: { low: 0.4, middle: 0.6, high: 0.8 },
};

describe("the range of a predicted vote", () => {
  it("is a point where all is known, and that of the heat balance", () => {
    const known = {
      airTempC: 23,
      radiantOffsetK: 1,
      airSpeedMps: 0.1,
      relHumidityPct: 50,
      metabolicRateMet: 1,
      clothingClo: 0.6,
    };
    const inputs = Object.fromEntries(Object.entries(known).map(([key, value]) => [key, exactly(value)])) as FeltInputs;
    const range = feltRange(inputs);
    const { pmv } = voteOf({ ...known, radiantTempC: 24, relAirSpeedMps: 0.1 });
    expect(range).toMatchObject({ status: "ok", pmv: exactly(pmv) });
  });

  it("holds the vote of every combination of its inputs", () => {
    const range = feltRange(OFFICE);
    if (range.status !== "ok") throw new Error("within limits");
    const within = ({ low, high }: Spread) => fc.double({ min: low, max: high, noNaN: true });
    const someone = fc.record({
      airTempC: within(OFFICE.airTempC),
      offset: within(OFFICE.radiantOffsetK),
      speed: within(OFFICE.airSpeedMps),
      relHumidityPct: within(OFFICE.relHumidityPct),
      metabolicRateMet: within(OFFICE.metabolicRateMet),
      clothingClo: within(OFFICE.clothingClo),
    });
    fc.assert(
      fc.property(someone, ({ offset, speed, ...rest }) => {
        const relAirSpeedMps = speed + 0.3 * (rest.metabolicRateMet - 1);
        const { pmv } = voteOf({ ...rest, radiantTempC: rest.airTempC + offset, relAirSpeedMps });
        expect(pmv).toBeGreaterThanOrEqual(range.pmv.low - 0.02);
        expect(pmv).toBeLessThanOrEqual(range.pmv.high + 0.02);
      }),
    );
    expect(range.ppdPct.low).toBeGreaterThanOrEqual(5);
    expect(range.ppdPct.high).toBeGreaterThan(range.ppdPct.middle);
  });

  it("is refused where an end lies outside the method", () => {
    expect(feltRange({ ...OFFICE, metabolicRateMet: { low: 0.5, middle: 1, high: 1.2 } }).status).toBe(
      "outside-limits",
    );
  });

  it("has votes beside it that are half a step away", () => {
    const range = { low: -1, middle: -0.5, high: 0.2 };
    expect([-2, -1, 0, 1].map((vote) => besideRange(vote, range))).toEqual(["colder", "within", "within", "warmer"]);
    expect(besideRange(-1, { low: -0.5, middle: 0, high: 1 })).toBe("within");
  });
});
