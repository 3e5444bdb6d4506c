import type { ThermalCondition } from "./thermal-condition";
import { vapourPressurePa } from "./vapour-pressure";

export type ComfortStandard = "iso-7730" | "ashrae-55";

/** What lies outside the range that a standard's method holds for. */
export type BrokenLimit = { what: string; value: number; low: number; high: number; unit: string };

type Range = readonly [low: number, high: number];
type Ranges = { airTempC: Range; radiantTempC: Range; speed: Range; met: Range; clo: Range; vapourPa: Range };

/**
 * ISO 7730:2005 clause 4.1 (its limit of 2,700 Pa from memory), and the ranges of the ASHRAE 55 method as public
 * implementations of it have them.
 */
const RANGES: Record<ComfortStandard, Ranges> = {
  "iso-7730": {
    airTempC: [10, 30],
    radiantTempC: [10, 40],
    speed: [0, 1],
    met: [0.8, 4],
    clo: [0, 2],
    vapourPa: [0, 2700],
  },
  "ashrae-55": {
    airTempC: [10, 40],
    radiantTempC: [10, 40],
    speed: [0, 2],
    met: [1, 4],
    clo: [0, 1.5],
    vapourPa: [0, Number.POSITIVE_INFINITY],
  },
};

/** Limits of a standard's method that a condition breaks; none of them when the method may be used. */
export function brokenLimits(condition: ThermalCondition, standard: ComfortStandard): BrokenLimit[] {
  const ranges = RANGES[standard];
  const { airTempC, radiantTempC, relAirSpeedMps, metabolicRateMet, clothingClo, relHumidityPct } = condition;
  const checks: [what: string, value: number, range: Range, unit: string][] = [
    ["air temperature", airTempC, ranges.airTempC, "°C"],
    ["mean radiant temperature", radiantTempC, ranges.radiantTempC, "°C"],
    ["air speed", relAirSpeedMps, ranges.speed, "m/s"],
    ["activity", metabolicRateMet, ranges.met, "met"],
    ["clothing", clothingClo, ranges.clo, "clo"],
    ["relative humidity", relHumidityPct, [0, 100], "%"],
    ["vapour pressure", vapourPressurePa(airTempC, relHumidityPct), ranges.vapourPa, "Pa"],
  ];
  return checks.flatMap(([what, value, [low, high], unit]) =>
    // False for NaN as well.
    value >= low && value <= high ? [] : { what, value, low, high, unit },
  );
}
