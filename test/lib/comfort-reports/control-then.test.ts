import { expect, test } from "vitest";
import { controlThen } from "@/lib/comfort-reports/control-then";

const at = (zoneAirTempC: number | null, coolingSetpointC: number | null = 22, heatingSetpointC: number | null = 20) =>
  controlThen({ zoneAirTempC, coolingSetpointC, heatingSetpointC });

test.each([
  [22.4, "near-cooling"],
  [21.6, "near-cooling"],
  [21, "between"],
  [20.3, "near-heating"],
  [19.4, "below-heating"],
  [22.6, "above-cooling"],
  [null, "unknown"],
] as const)("zone air of %s °C between 20 and 22 is %s", (air, state) => {
  expect(at(air)).toBe(state);
});

test("one setpoint is enough, none is not", () => {
  expect(at(22, 22, null)).toBe("near-cooling");
  expect(at(22, null, 20)).toBe("between");
  expect(at(22, null, null)).toBe("unknown");
});
