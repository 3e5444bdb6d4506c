import { describe, expect, it } from "vitest";
import { crossingsPerHour, roundingRateDeviation } from "@/lib/comfort-reports/level-crossing";
import { compareWithCase, loadCheckValues } from "../../support/check-values";

type Inputs = Record<"meanZone" | "sdZone" | "sdZoneRate" | "meanLevel" | "sdLevel" | "sdLevelRate", number>;
const zone = { meanC: 22, deviationK: 1, rateDeviationKPerHour: 0.5 };
const cold = { meanC: 19.5, deviationK: 0.8, rateDeviationKPerHour: 0.2 };

describe("crossings of a level of complaint", () => {
  for (const check of loadCheckValues<Inputs>("comfort-reports/level-crossing").cases)
    it(check.name, () => {
      const { meanZone, sdZone, sdZoneRate, meanLevel, sdLevel, sdLevelRate } = check.inputs;
      const perHour = crossingsPerHour(
        { meanC: meanZone, deviationK: sdZone, rateDeviationKPerHour: sdZoneRate },
        { meanC: meanLevel, deviationK: sdLevel, rateDeviationKPerHour: sdLevelRate },
      );
      compareWithCase(check, { perHour });
    });
  for (const check of loadCheckValues<{ quantum: number; intervalHours: number }>("comfort-reports/rounding-rate")
    .cases)
    it(check.name, () => {
      const { quantum, intervalHours } = check.inputs;
      compareWithCase(check, { sdRate: roundingRateDeviation(quantum, intervalHours) });
    });

  it("grow as the zone comes nearer, spreads wider or swings faster", () => {
    const now = crossingsPerHour(zone, cold);
    expect(crossingsPerHour({ ...zone, meanC: 21 }, cold)).toBeGreaterThan(now);
    expect(crossingsPerHour({ ...zone, deviationK: 1.2 }, cold)).toBeGreaterThan(now);
    expect(crossingsPerHour({ ...zone, rateDeviationKPerHour: 1 }, cold)).toBeGreaterThan(now);
  });
});
