import { describe, expect, it } from "vitest";
import { crossingsPerHour } from "@/lib/comfort-reports/level-crossing";

const zone = { meanC: 22, deviationK: 1, rateDeviationKPerHour: 0.5 };
const cold = { meanC: 19.5, deviationK: 0.8, rateDeviationKPerHour: 0.2 };

describe("crossings of a level of complaint", () => {
  it("grow as the zone comes nearer, spreads wider or swings faster", () => {
    const now = crossingsPerHour(zone, cold);
    expect(crossingsPerHour({ ...zone, meanC: 21 }, cold)).toBeGreaterThan(now);
    expect(crossingsPerHour({ ...zone, deviationK: 1.2 }, cold)).toBeGreaterThan(now);
    expect(crossingsPerHour({ ...zone, rateDeviationKPerHour: 1 }, cold)).toBeGreaterThan(now);
  });
});
