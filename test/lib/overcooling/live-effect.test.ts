import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import { headlineOnly } from "@/lib/overcooling/headline-only";
import { liveEffect, type Sensitivity } from "@/lib/overcooling/live-effect";
import { defaults, office } from "./offices";

const of: Sensitivity = {
  stated: 1000,
  othersDeviation: 30,
  value: 2,
  low: 1,
  high: 4,
  lowTotal: 900,
  highTotal: 1400,
};

// By hand: 100 a unit below the value, 200 above; own u = 500 / √24 = 102.06; √(30² + 102.06²) · 1.2816 = 136.3.
test("a typed value moves the total along its swing, and the range is the root of squares", () => {
  expect(liveEffect(of, { value: 2, low: 1, high: 4 })?.stated).toBe(1000);
  expect(liveEffect(of, { value: 2, low: 1, high: 4 })?.high).toBeCloseTo(1136.3, 1);
  expect(liveEffect(of, { value: 1.5, low: 1.5, high: 1.5 })?.stated).toBe(950);
  expect(liveEffect(of, { value: 5, low: 5, high: 5 })?.stated).toBe(1600);
  // Known exactly, only the others' 30 is left: ± 38.4.
  expect(liveEffect(of, { value: 3, low: 3, high: 3 })?.low).toBeCloseTo(1200 - 38.4, 1);
});

test("a value at the end of its range moves along the side that there is", () => {
  expect(liveEffect({ ...of, high: 2, highTotal: 1000 }, { value: 3, low: 3, high: 3 })?.stated).toBe(1100);
  expect(liveEffect({ ...of, low: 2, lowTotal: 1000 }, { value: 1, low: 1, high: 1 })?.stated).toBe(800);
});

test("what is no range has no effect to show", () => {
  expect(liveEffect(of, { value: 5, low: 1, high: 4 })).toBeNull();
  expect(liveEffect(of, { value: Number.NaN, low: 1, high: 4 })).toBeNull();
  expect(liveEffect({ ...of, low: 2, high: 2 }, { value: 2, low: 1, high: 4 })).toBeNull();
});

test("lies near the exact effect of a change that the total follows straight", () => {
  const id = "building-heat-loss-per-area";
  const before = assessBuilding(office({ draws: 1000 }));
  if (before.status !== "ok") throw new Error("the office is assessed");
  const line = before.tornado.find((each) => each.id === id);
  if (!line) throw new Error("heat loss swings the total");
  const { value, low, high } = defaults().find((each) => each.id === id) as {
    value: number;
    low: number;
    high: number;
  };
  const typed = { value: 1.4, low: 1.2, high: 1.6 };
  const live = liveEffect({ stated: before.statedTotal, othersDeviation: 0, value, low, high, ...line }, typed);
  const exact = headlineOnly(office({ draws: 1000, assumptions: defaults({ [id]: typed }) }));
  if (exact.status !== "ok") throw new Error("the changed office is assessed");
  expect(line.inputs).toBe(1);
  expect(Math.abs((live?.stated as number) / exact.stated - 1)).toBeLessThan(1e-3);
});
