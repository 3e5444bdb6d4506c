import { expect, test } from "vitest";
import { ALL_YEAR } from "@/lib/proposals/acting-window";
import { costCurve } from "@/lib/proposals/live/cost-curve";
import { liveBuilding, liveZone, stateAt } from "@/test/factories/live-building";

const chosen = [{ zoneId: 1, lever: "cooling-setpoint" as const, amount: 1 }];

test("without a price of reports the curve falls to its comfort limit, and says that reports have no price", () => {
  const curve = costCurve(liveBuilding(undefined, { costPerReport: null }), chosen, ALL_YEAR);
  const costs = curve?.points.map((each) => each.expected) ?? [];
  expect(costs.every((each, i) => i === 0 || each < (costs[i - 1] ?? 0))).toBe(true);
  expect(curve?.hasReportCost).toBe(false);
  expect(curve?.flat.toK).toBe(curve?.allowedToK);
});

test("with costly hot reports the least cost lies inside, with a flat part round it", () => {
  const states = {
    cooling: stateAt(1800, 23.2),
    deadband: stateAt(0, 23),
    reheat: stateAt(0, 21),
    other: stateAt(0, 23),
  };
  const zone = liveZone({ states, floorAreaM2: 800 });
  const curve = costCurve(liveBuilding([zone], { costPerReport: 60 }), chosen, ALL_YEAR);
  const least = Math.min(...(curve?.points.map((each) => each.expected) ?? []));
  const at = curve?.points.find((each) => each.expected === least)?.raiseK ?? 0;
  expect(curve?.flat.fromK).toBeLessThanOrEqual(at);
  expect(curve?.flat.toK).toBeGreaterThanOrEqual(at);
  expect(curve?.flat.toK).toBeGreaterThan(curve?.flat.fromK ?? 9);
  expect(at).toBeLessThan(4);
});

test("rises that make too many hours too warm are not among those allowed", () => {
  const states = {
    cooling: stateAt(1800, 24),
    deadband: stateAt(0, 23),
    reheat: stateAt(0, 21),
    other: stateAt(0, 23),
  };
  const curve = costCurve(liveBuilding([liveZone({ states })]), chosen, ALL_YEAR);
  expect(curve?.allowedToK).toBeLessThan(4);
  expect(costCurve(liveBuilding(), [{ zoneId: 1, lever: "schedule", amount: 1 }], ALL_YEAR)).toBeNull();
});
