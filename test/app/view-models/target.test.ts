import { expect, test } from "vitest";
import { curvePicture, FRAME, type Point, targetLede } from "@/app/buildings/[buildingId]/target/view-model";

const point = (targetC: number, p50: number): Point => ({
  targetC,
  tier: 2,
  p10: 0.8 * p50,
  p50,
  p90: 1.3 * p50,
  stated: p50,
  working: { formula: "", terms: [], result: { symbol: "C", label: "", value: p50, unit: "" } },
  votes: { warmer: 0.25, cooler: 0.25 },
});
const shown = { temperatureUnit: "C", targetZoneAirTempC: 23 } as const;

test("the picture has its points in order, on scale, and the building's own target marked", () => {
  const picture = curvePicture([point(22, 1000), point(23, 2000), point(25, 4000)], shown, String);
  expect(picture.ticks.map((each) => [each.label, each.isTarget])).toEqual([
    ["22.0", false],
    ["23.0", true],
    ["25.0", false],
  ]);
  // A third of the way from 22 to 25 °C lies the second point.
  const [first, second, third] = picture.ticks.map((each) => each.x) as [number, number, number];
  expect((second - first) / (third - first)).toBeCloseTo(1 / 3, 2);
  expect(Number(picture.costTicks.at(-1)?.label)).toBeGreaterThanOrEqual(1.3 * 4000);
  expect(picture.costTicks[0]).toEqual({ y: FRAME.cost.bottom, label: "0" });
  // A quarter of people stands half way up a scale that ends at one half.
  expect(picture.ends.warmer).toBe((FRAME.votes.top + FRAME.votes.bottom) / 2);
});

test("a single point and a cost of nothing still make a picture", () => {
  const picture = curvePicture([point(23, 0)], shown, String);
  expect(JSON.stringify(picture)).not.toMatch(/NaN|null/);
});

test("says why the target is what it is, and whose", () => {
  expect(targetLede(shown)).toMatch(/^The target is 23\.0\s°C, the default\./);
  expect(targetLede({ temperatureUnit: "C", targetZoneAirTempC: 24 })).toMatch(
    /^The target is 24\.0\s°C, this building's own; the default is 23\.0/,
  );
});
