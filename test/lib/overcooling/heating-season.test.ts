import { expect, test } from "vitest";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import type { Assessed } from "@/lib/overcooling/assessment";
import type { AssessmentInput } from "@/lib/overcooling/assessment-input";
import { heater, office, zone } from "./offices";

const assessed = (changes: Partial<AssessmentInput>): Assessed => {
  const states = { cooling: { hours: 900, depthK: 1 } };
  const zones = [zone(1, states, { devices: [heater(1), heater(2)] })];
  const result = assessBuilding(office({ floorAreaM2: 140, draws: 300, zones, ...changes }));
  if (result.status !== "ok") throw new Error(JSON.stringify(result.findings));
  return result;
};

// By hand: 720 kWh × (1 - 0.6) = 288 kWh at 0.085, less 288 / 0.75 kWh of gas at 1 / 29.3071.
test("heaters in winter cost electricity less the gas that they replace", () => {
  const result = assessed({});
  expect(result.heatingSeason?.stated).toBeCloseTo(288 * 0.085 - 288 / 0.75 / 29.3071, 9);
  expect(result.statedTotal).toBe(result.components.reduce((sum, each) => sum + each.statedValue, 0));
});

test("in place of electric reheat they cost nothing more, and without a price of heat nothing is credited", () => {
  expect(assessed({ heatingFuel: "electricity" }).heatingSeason?.stated).toBeCloseTo(0, 9);
  expect(assessed({ heatPricePerKwh: null }).heatingSeason?.stated).toBeCloseTo(288 * 0.085, 9);
});

test("a building without heaters has no such figure", () => {
  expect(assessed({ zones: [zone(1, { cooling: { hours: 900, depthK: 1 } })] }).heatingSeason).toBeNull();
});
