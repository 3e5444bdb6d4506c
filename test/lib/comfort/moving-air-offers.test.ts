import { expect, it } from "vitest";
import { FAN_SPEEDS_MPS } from "@/lib/comfort/desk-fan";
import type { FeltInputs } from "@/lib/comfort/felt-range";
import { draughtRange, fanEffects } from "@/lib/comfort/moving-air";

const at = (middle: number) => ({ low: middle, middle, high: middle });
const office = (met: number, stillMps = 0.05): FeltInputs => ({
  airTempC: at(26),
  radiantOffsetK: at(0),
  airSpeedMps: at(stillMps),
  relHumidityPct: at(50),
  metabolicRateMet: at(met),
  clothingClo: at(0.6),
});

it("a fan is worth more the faster the air, by one figure at 1 met and a range above", () => {
  const resting = fanEffects(office(1));
  expect(resting.map(({ airSpeedMps }) => airSpeedMps)).toEqual([...FAN_SPEEDS_MPS]);
  for (const { lowK, highK } of resting) expect(highK - lowK).toBeLessThan(1e-3);
  expect(resting[0]?.lowK).toBeGreaterThan(0.5);
  const typing = fanEffects(office(1.1));
  for (const [i, { lowK, highK }] of typing.entries()) {
    expect(highK).toBeGreaterThan(lowK);
    expect(lowK).toBeGreaterThan(typing[i - 1]?.lowK ?? 0);
  }
  // Where air moves already, a fan buys less.
  expect(fanEffects(office(1, 0.3))[1]?.highK).toBeLessThan(resting[1]?.highK ?? 0);
});

it("a draught is told with its range over the turbulence, as ISO 7730's equation has it, and refused beyond its limits", () => {
  // By hand: (34 - 22) (0.2 - 0.05)^0.62 (0.37 · 0.2 · 40 + 3.14) = 12 · 0.308436 · 6.1 = 22.58.
  const range = draughtRange({ airTempC: 22, airSpeedMps: 0.2 });
  expect(range).toMatchObject({ status: "ok", pct: expect.closeTo(22.58, 2) });
  if (range.status === "ok") expect([range.lowPct < range.pct, range.highPct > range.pct]).toEqual([true, true]);
  expect(draughtRange({ airTempC: 27, airSpeedMps: 0.2 })).toMatchObject({ what: "air temperature", high: 26 });
  expect(draughtRange({ airTempC: 22, airSpeedMps: 0.6 })).toMatchObject({ what: "air speed", high: 0.5 });
  expect(draughtRange({ airTempC: 22, airSpeedMps: Number.NaN }).status).toBe("outside-limits");
});
