import { expect, test } from "vitest";
import { zoneExposure } from "@/lib/trends/exposure";
import { exposureAtTarget } from "@/lib/trends/exposure-at-target";
import { zoneStates } from "@/lib/trends/state";
import { CURVE_TARGETS_C } from "@/lib/trends/target-tally";
import { OCCUPIED_STATES } from "@/lib/trends/zone-state";
import { LIMITS, scenarioGrids } from "../../support/zone-scenario";

const grids = scenarioGrids(({ i, hour }) => ({
  zoneAirTempC: 21.2 + 3 * Math.abs(Math.sin(i)),
  airflowM3ps: hour < 11 ? 0.1 : 0.25,
  reheatValvePct: hour === 9 ? 40 : 0,
  outdoorAirTempC: 12 + (i % 17),
}));
const at = (targetZoneAirTempC: number) =>
  zoneExposure({
    zoneId: 7,
    grids,
    states: zoneStates(grids, LIMITS),
    targetZoneAirTempC,
    seasonThresholdC: 13,
    occupiedSource: "schedule",
  });

test.each(CURVE_TARGETS_C)("an exposure carried to %d °C is the one worked out for it", (targetC) => {
  const [carried, own] = [exposureAtTarget(at(23.2), targetC), at(targetC)];
  if (!carried) throw new Error("the target is on the curve");
  for (const state of OCCUPIED_STATES) {
    expect(carried.byState[state].hours).toBe(own.byState[state].hours);
    expect(carried.byState[state].overcoolingKh).toBeCloseTo(own.byState[state].overcoolingKh, 3);
    expect(carried.byState[state].hoursBelowTarget).toBeCloseTo(own.byState[state].hoursBelowTarget, 3);
    own.byOutdoorBin?.forEach((bin, i) => {
      expect(carried.byOutdoorBin?.[i]?.lowC).toBe(bin.lowC);
      expect(carried.byOutdoorBin?.[i]?.byState[state].overcoolingKh).toBeCloseTo(bin.byState[state].overcoolingKh, 3);
    });
  }
  expect(OCCUPIED_STATES.some((state) => own.byState[state].overcoolingKh > 1)).toBe(true);
});

test("a target that is not on the curve has no exposure, and the zone's own is given as it is", () => {
  const exposure = at(23.2);
  expect(exposureAtTarget(exposure, 22.75)).toBeNull();
  expect(exposureAtTarget(exposure, 23.2)).toBe(exposure);
});
