import { quantileOfSorted } from "@/lib/statistics/quantile";
import { dewPointC } from "./dew-point";
import { stepHours } from "./grid";
import type { ZoneGrids } from "./zone-grids";

/** Outdoor air below which a supply air reset has something to give (reference D7, row 10). */
export const MILD_BELOW_C = 20;
/** Outdoor air from which a reset stands at its cold end (Guideline 36-2021 resets between 16 and 21 °C outdoors: from memory). */
export const HOT_FROM_C = 24;
/** Room air in which supply air is held cold to dry it (reference D7, row 11). */
export const HUMID_ABOVE_PCT = 60;
export const HUMID_DEW_POINT_C = 15;

/** Supply air of a zone's air handler in occupied hours of the cooling season, mild and hot, and how humid the air was. */
export type SupplyAirReset = {
  mildHours: number;
  mildMedianC: number | null;
  /** From the 10th to the 90th percentile in mild weather [K]. */
  mildSpreadK: number | null;
  hotHours: number;
  hotMedianC: number | null;
  /** Mild hours with humidity recorded, and those of them above 60 % or a dew point of 15 °C. */
  humidityHours: number;
  humidHours: number;
  medianDewPointC: number | null;
};

/** `season` is `coolingSeasonMask` of the grids. Null without supply or outdoor air. */
export function supplyAirReset(grids: ZoneGrids, season: Uint8Array): SupplyAirReset | null {
  const { supplyAirTempC, outdoorAirTempC, zoneAirTempC, relativeHumidityPct } = grids;
  if (!supplyAirTempC || !outdoorAirTempC) return null;
  const [mild, hot, dewPoints] = [
    new Gathered(season.length),
    new Gathered(season.length),
    new Gathered(season.length),
  ];
  let humid = 0;
  for (let i = 0; i < season.length; i++) {
    const supply = supplyAirTempC[i] as number;
    const outdoor = outdoorAirTempC[i] as number;
    if (season[i] !== 1 || Number.isNaN(supply)) continue;
    if (outdoor >= HOT_FROM_C) hot.add(supply);
    if (!(outdoor < MILD_BELOW_C)) continue;
    mild.add(supply);
    const humidity = relativeHumidityPct ? (relativeHumidityPct[i] as number) : Number.NaN;
    if (!(humidity > 0)) continue;
    const dewPoint = dewPointC(zoneAirTempC[i] as number, humidity);
    dewPoints.add(dewPoint);
    if (humidity > HUMID_ABOVE_PCT || dewPoint > HUMID_DEW_POINT_C) humid++;
  }
  const hoursEach = stepHours(grids.grid);
  const [mildMedianC = null, p10 = null, p90 = null] = mild.quantiles([0.5, 0.1, 0.9]);
  return {
    mildHours: mild.count * hoursEach,
    mildMedianC,
    mildSpreadK: p10 === null || p90 === null ? null : p90 - p10,
    hotHours: hot.count * hoursEach,
    hotMedianC: hot.quantiles([0.5])[0] ?? null,
    humidityHours: dewPoints.count * hoursEach,
    humidHours: humid * hoursEach,
    medianDewPointC: dewPoints.quantiles([0.5])[0] ?? null,
  };
}

/** Values in a room that is large enough from the start. */
class Gathered {
  count = 0;
  private readonly values: Float64Array;

  constructor(atMost: number) {
    this.values = new Float64Array(atMost);
  }

  add(value: number): void {
    this.values[this.count++] = value;
  }

  /** None without values. */
  quantiles(wanted: readonly number[]): number[] {
    if (this.count === 0) return [];
    const ascending = this.values.subarray(0, this.count).sort();
    return wanted.map((p) => quantileOfSorted(ascending, p));
  }
}
