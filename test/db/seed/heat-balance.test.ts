import { expect, it } from "vitest";
import { type HeatSums, stepHeatBalance } from "@/db/seed/heat-balance";
import { AIR_HEAT_JPM3K, zoneModel } from "@/db/seed/zone-model";

const model = zoneModel({
  floorAreaM2: 110,
  facade: "east",
  underRoof: true,
  neededAirflowM3ps: 0.5,
  designAirflowM3ps: 0.5,
  minimumFraction: 0.3,
});
const sums = (): HeatSums => ({ gains: 0, solar: 0, heaters: 0, envelope: 0, partition: 0, supply: 0, stored: 0 });
const loads = {
  outdoorAirC: 30,
  interiorAirC: 23,
  airflowM3ps: 0.2,
  dischargeAirC: 13.5,
  gainsW: 1800,
  solarW: 600,
  heatersW: 700,
};

it("settles where the heat flows of the textbook balance add up to nothing", () => {
  let temps = { airC: 18, structureC: 18 };
  for (let step = 0; step < 20_000; step++) temps = stepHeatBalance(model, temps, loads, 180, sums());
  // Hand: structure s and air t with g(s - t) + U(30 - s) + 0.4 x 2400 W = 0, and the air's own balance, solved by elimination.
  const { structureToAirWpK: g, structureToOutdoorWpK: wall, envelopeWpK: window, partitionWpK: partition } = model;
  const supply = AIR_HEAT_JPM3K * 0.2;
  const shared = (g * wall) / (g + wall);
  const airC =
    (window * 30 + partition * 23 + supply * 13.5 + shared * 30 + 0.6 * 2400 + 700 + (960 * g) / (g + wall)) /
    (window + partition + supply + shared);
  expect(temps.airC).toBeCloseTo(airC, 6);
});

it("warms an isolated zone as fast as heat over heat capacity", () => {
  const alone = { ...model, envelopeWpK: 0, partitionWpK: 0, structureToOutdoorWpK: 0 };
  const still = { ...loads, airflowM3ps: 0, gainsW: 1000, solarW: 0, heatersW: 500 };
  let temps = { airC: 20, structureC: 20 };
  for (let step = 0; step < 480; step++) temps = stepHeatBalance(alone, temps, still, 180, sums());
  const stored =
    alone.airHeatCapacityJpK * (temps.airC - 20) + alone.structureHeatCapacityJpK * (temps.structureC - 20);
  expect(stored / (1500 * 86_400)).toBeCloseTo(1, 9);
});

it("stores what flows in, whatever the loads", () => {
  const total = sums();
  let temps = { airC: 24, structureC: 21 };
  for (let step = 0; step < 2000; step++) {
    const changing = { ...loads, outdoorAirC: 10 + 15 * Math.sin(step / 70), airflowM3ps: step % 3 ? 0.4 : 0 };
    temps = stepHeatBalance(model, temps, changing, 180, total);
  }
  const flows = total.gains + total.solar + total.heaters + total.envelope + total.partition + total.supply;
  expect(Math.abs(flows - total.stored) / total.gains).toBeLessThan(1e-9);
});
