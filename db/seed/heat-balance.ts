import { AIR_HEAT_JPM3K, type ZoneModel } from "./zone-model";

/** Temperatures of the two masses of a zone. */
export type ZoneTemps = { airC: number; structureC: number };

/** What acts on a zone during a step. */
export type ZoneLoads = {
  outdoorAirC: number;
  /** Air of the rest of the building. */
  interiorAirC: number;
  airflowM3ps: number;
  dischargeAirC: number;
  /** People, lights and equipment; sun through the windows; heaters under desks. */
  gainsW: number;
  solarW: number;
  heatersW: number;
};

/** Heat into a zone over a time [J]; `stored` is the sum of the others but for rounding. */
export type HeatSums = {
  gains: number;
  solar: number;
  heaters: number;
  envelope: number;
  partition: number;
  supply: number;
  stored: number;
};

/** Share of sun, people and equipment that warms the structure first. */
const RADIANT_SHARE = 0.4;

/**
 * Moves a zone on by one step of the implicit Euler method, which is stable at any step, and adds the heat that
 * flowed to `sums`. With index ' for the end of the step, C dT/dt = sum of UA (T_other - T') + heat, for air and structure.
 */
export function stepHeatBalance(
  model: ZoneModel,
  now: ZoneTemps,
  loads: ZoneLoads,
  seconds: number,
  sums: HeatSums,
): ZoneTemps {
  const { outdoorAirC, interiorAirC, dischargeAirC, gainsW, solarW, heatersW } = loads;
  const supplyWpK = AIR_HEAT_JPM3K * loads.airflowM3ps;
  const airStoreWpK = model.airHeatCapacityJpK / seconds;
  const structureStoreWpK = model.structureHeatCapacityJpK / seconds;
  // Both balances at the end of the step: a · air - g · structure = p and b · structure - g · air = q.
  const g = model.structureToAirWpK;
  const a = airStoreWpK + model.envelopeWpK + model.partitionWpK + supplyWpK + g;
  const b = structureStoreWpK + model.structureToOutdoorWpK + g;
  const p =
    airStoreWpK * now.airC +
    model.envelopeWpK * outdoorAirC +
    model.partitionWpK * interiorAirC +
    supplyWpK * dischargeAirC +
    (1 - RADIANT_SHARE) * (gainsW + solarW) +
    heatersW;
  const q =
    structureStoreWpK * now.structureC + model.structureToOutdoorWpK * outdoorAirC + RADIANT_SHARE * (gainsW + solarW);
  const airC = (p * b + g * q) / (a * b - g * g);
  const structureC = (q + g * airC) / b;

  sums.gains += seconds * gainsW;
  sums.solar += seconds * solarW;
  sums.heaters += seconds * heatersW;
  sums.envelope +=
    seconds * (model.envelopeWpK * (outdoorAirC - airC) + model.structureToOutdoorWpK * (outdoorAirC - structureC));
  sums.partition += seconds * model.partitionWpK * (interiorAirC - airC);
  sums.supply += seconds * supplyWpK * (dischargeAirC - airC);
  sums.stored +=
    model.airHeatCapacityJpK * (airC - now.airC) + model.structureHeatCapacityJpK * (structureC - now.structureC);
  return { airC, structureC };
}
