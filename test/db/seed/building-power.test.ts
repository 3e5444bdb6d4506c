import { describe, expect, it } from "vitest";
import { powerParts } from "@/db/seed/building-power";
import { coilLatentKw, humidityRatio } from "@/db/seed/coil-latent";
import { demoSpan } from "@/db/seed/demo-calendar";
import { restOfBuilding } from "@/db/seed/rest-of-building";
import { AIR_HEAT_JPM3K } from "@/db/seed/zone-model";
import { simulated } from "./simulated-year";

describe("water in the coil", () => {
  it("is that of saturated air at its dew point", () => {
    // Saturation at 13 and 20 °C, 101.325 kPa: 9.37 and 14.70 g/kg (psychrometric tables, from memory); the formula takes
    // moist air for an ideal gas, which gives 0.5 % less.
    expect(Math.abs(1000 * humidityRatio(13) - 9.37)).toBeLessThan(0.08);
    expect(Math.abs(1000 * humidityRatio(20) - 14.7)).toBeLessThan(0.12);
  });

  it("takes out what outdoor air and people bring, whatever the air moved", () => {
    const at = (airM3ps: number, outdoorM3ps: number) =>
      coilLatentKw({
        airM3ps,
        outdoorShare: outdoorM3ps / airM3ps,
        outdoorDewPointC: 20,
        supplyC: 13,
        peopleKgPerSecond: 0,
      });
    // By hand: 2501 kJ/kg * 1.2 kg/m³ * 0.2 m³/s * (14.7 - 9.37) g/kg = 3.2 kW.
    expect(at(1, 0.2)).toBeCloseTo(3.2, 1);
    expect(at(2, 0.2)).toBeCloseTo(at(1, 0.2), 9);
    expect(coilLatentKw({ airM3ps: 1, outdoorShare: 1, outdoorDewPointC: 5, supplyC: 13, peopleKgPerSecond: 0 })).toBe(
      0,
    );
  });
});

describe("the rest of the building", () => {
  it("is spared the heat that zones draw from it, no more and no less", () => {
    const sim = simulated(demoSpan("2026-06-01", "2026-07-11"), ["1-05", "1-06", "2-12"]);
    const { lessAirM3ps } = restOfBuilding(sim.zones, sim.calendar, sim.outdoor);
    let spared = 0;
    for (const [i, air] of lessAirM3ps.entries()) {
      const interiorC = sim.outdoor.interiorAirTempC[i] as number;
      spared += 900 * AIR_HEAT_JPM3K * air * (interiorC - (sim.outdoor.supplyAirTempC[i] as number) - 0.5);
    }
    const drawn = sim.zones.reduce((sum, { run }) => sum + run.heat.partition, 0);
    expect(drawn).toBeGreaterThan(0);
    // The span ends on the night of a Friday: some hours of six weeks are still owed.
    expect(spared / drawn).toBeGreaterThan(0.98);
    expect(spared / drawn).toBeLessThan(1.01);
  });
});

it("parts of the power are those of an office of its size", () => {
  const sim = simulated(demoSpan("2026-07-06", "2026-07-11"));
  const parts = powerParts(sim.zones, sim.calendar, sim.outdoor);
  const dayKwh = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / 4 / 5;
  const floorM2 = sim.zones.reduce((sum, { plan }) => sum + plan.floorAreaM2, 0);
  // A summer day of an office: plant 50 to 150 Wh/m², fan 10 to 60 Wh/m² (common practice, no source).
  expect((1000 * dayKwh(parts.plant)) / floorM2).toBeGreaterThan(50);
  expect((1000 * dayKwh(parts.plant)) / floorM2).toBeLessThan(220);
  expect((1000 * dayKwh(parts.fan)) / floorM2).toBeGreaterThan(10);
  expect((1000 * dayKwh(parts.fan)) / floorM2).toBeLessThan(60);
});
