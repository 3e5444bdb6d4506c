import { expect, it } from "vitest";
import { comfortZone } from "@/lib/comfort/comfort-zone";

it("the zone of a standard has no end where the method does not reach", () => {
  const zoneOf = (metabolicRateMet: number, clothingClo: number) =>
    comfortZone({ metabolicRateMet, clothingClo, relHumidityPct: 50, relAirSpeedMps: 0.1 });
  expect(zoneOf(1.1, 0.5).lowerC).not.toBeNull();
  expect(zoneOf(4, 1.5).lowerC).toBeNull();
});
