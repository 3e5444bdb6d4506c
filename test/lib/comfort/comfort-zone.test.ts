import { describe, expect, it } from "vitest";
import { comfortZone } from "@/lib/comfort/comfort-zone";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

const zoneOf = ({ met, clo, rh, vr = 0.1 }: { met: number; clo: number; rh: number; vr?: number }) =>
  comfortZone({ metabolicRateMet: met, clothingClo: clo, relHumidityPct: rh, relAirSpeedMps: vr });

describe("the zone of a standard", () => {
  for (const check of loadCheckValues<{ met: number; clo: number; rh: number; vr: number }>("comfort/zone").cases)
    it(check.name, () => {
      const { lowerC, neutralC, upperC } = zoneOf(check.inputs);
      compareWithCase(check, {
        lower: lowerC ?? "none",
        neutral: neutralC ?? "none",
        upper: upperC ?? "none",
      });
    });

  for (const check of loadCheckValues<{ met: number; clo: number; rh: number }>("comfort/zone-classes").cases)
    it(check.name, () => compareWithCase(check, { centre: zoneOf(check.inputs).neutralC ?? "none" }));

  it("has no end where the method does not reach", () => {
    expect(zoneOf({ met: 1.1, clo: 0.5, rh: 50 }).lowerC).not.toBeNull();
    expect(zoneOf({ met: 4, clo: 1.5, rh: 50 }).lowerC).toBeNull();
  });
});
