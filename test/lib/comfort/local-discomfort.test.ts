import { describe, expect, it } from "vitest";
import { draughtRatePct } from "@/lib/comfort/draught-rate";
import { dissatisfiedByAsymmetry, dissatisfiedByFloor, dissatisfiedByLayers } from "@/lib/comfort/local-discomfort";

describe("draught", () => {
  it("takes 40 % turbulence where none was measured, and is none in still air", () => {
    const air = { airTempC: 22, airSpeedMps: 0.2 };
    expect(draughtRatePct(air)).toBe(draughtRatePct({ ...air, turbulencePct: 40 }));
    expect(draughtRatePct({ airTempC: 22, airSpeedMps: 0.03 })).toBe(0);
  });
});

describe("parts of the body", () => {
  it("say nothing beyond the range of their model", () => {
    expect(dissatisfiedByLayers(8).status).toBe("outside-limits");
    expect(dissatisfiedByFloor(Number.NaN).status).toBe("outside-limits");
    expect(dissatisfiedByAsymmetry("cool-wall", 15)).toEqual({ status: "outside-limits", low: 0, high: 15 });
  });
});
