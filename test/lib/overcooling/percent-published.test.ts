import { expect, test } from "vitest";
import { SYSTEM_TYPES } from "@/lib/assumptions/system-type";
import { assessBuilding } from "@/lib/overcooling/assess-building";
import { sanityGates } from "@/lib/overcooling/sanity-gates";
import { defaults, office } from "./offices";

const estimate = (systemType: (typeof SYSTEM_TYPES)[number]) =>
  office({
    draws: 300,
    systemType,
    zones: office().zones.map((each) => ({ ...each, annual: null, exposure: null })),
  });

/** Percent a kelvin by its own arithmetic: 42.6 kWh/m² of an average office, 1.5 K. */
const percentOf = (systemType: (typeof SYSTEM_TYPES)[number]): number => {
  const result = assessBuilding(estimate(systemType));
  if (result.status !== "ok") throw new Error("the office is assessed");
  const kwh = result.components
    .filter((each) => ["setpoint", "deadband", "reheat", "fan"].includes(each.id))
    .reduce((sum, each) => sum + (each.electricKwh ?? 0), 0);
  return 100 * (1 - (1 - kwh / (42.6 * 36 * 140)) ** (1 / 1.5));
};

test.each(SYSTEM_TYPES)("percent a kelvin lies in the published range, or a finding explains it: %s", (systemType) => {
  const { low, high } = defaults().find((each) => each.id === `setpoint-percent-per-kelvin/${systemType}`) as {
    low: number;
    high: number;
  };
  const percent = percentOf(systemType);
  const result = assessBuilding(estimate(systemType));
  const codes = result.findings.map((each) => each.code);
  const said = percent > high ? "percent-above-published" : percent < low ? "percent-below-published" : null;
  expect(codes.filter((each) => /-published$/.test(each))).toEqual(said ? [said] : []);
});

const gate = (hvacKwh: number, presentCoolingSetpointC = 21) =>
  sanityGates(office({ floorAreaM2: 1000, presentCoolingSetpointC }), {
    tier: 1,
    headline: { p10: 1, p50: 2, p90: 3 },
    electricKwh: { p10: 0, p50: 0, p90: 0 },
    hvacKwh,
    setpointKwh: hvacKwh / 4,
    measuredAreaShare: 0,
    lowerTiers: [],
    widestInputs: [],
  })
    .filter((each) => /-published$/.test(each.code))
    .map((each) => [
      each.code,
      Math.round(each.evidence.percentPerK as number),
      Math.round(each.evidence.setpointPct as number),
    ]);

// High minimums: 0 to 4 % a kelvin. By hand: 8,520 of 42,600 kWh is 20 % for 2 K, 10.6 % a kelvin.
test("names a percentage above what was published, with the setpoint's part, and none inside", () => {
  expect(gate(8520)).toEqual([["percent-above-published", 11, 25]]);
  expect(gate(2000)).toEqual([]);
  expect(gate(8520, 22.8)).toEqual([]);
});
