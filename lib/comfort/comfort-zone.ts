import { predictedMeanVote, voteOf } from "./predicted-mean-vote";
import type { ThermalCondition } from "./thermal-condition";

/** Operative temperatures [°C] at which people would vote -0.5, 0 and +0.5, or null where the method does not reach. */
export type ComfortZone = { lowerC: number | null; neutralC: number | null; upperC: number | null };

export type ZoneCondition = Omit<ThermalCondition, "airTempC" | "radiantTempC">;

/** Half the width of the zone of ASHRAE 55 and of class B of ISO 7730, on the scale of sensation. */
const HALF_WIDTH = 0.5;
const SEARCHED = { lowC: 0, highC: 45 };

/** The standard's zone for people of one clothing and activity, air and surfaces alike. */
export function comfortZone(condition: ZoneCondition, halfWidth = HALF_WIDTH): ComfortZone {
  return {
    lowerC: temperatureAt(-halfWidth, condition),
    neutralC: temperatureAt(0, condition),
    upperC: temperatureAt(halfWidth, condition),
  };
}

/** Temperature [°C] of air and surfaces at which people would vote `vote`; null outside what the method holds for. */
export function temperatureAt(vote: number, condition: ZoneCondition): number | null {
  const at = (tempC: number): ThermalCondition => ({ ...condition, airTempC: tempC, radiantTempC: tempC });
  let low = SEARCHED.lowC;
  let high = SEARCHED.highC;
  while (high - low > 1e-5) {
    const middle = (low + high) / 2;
    if (voteOf(at(middle)).pmv < vote) low = middle;
    else high = middle;
  }
  const tempC = (low + high) / 2;
  return predictedMeanVote(at(tempC)).status === "ok" ? tempC : null;
}
