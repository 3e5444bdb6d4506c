import { relativeAirSpeed } from "./air-speed";
import { coolingEffect } from "./cooling-effect";
import { FAN_SPEEDS_MPS } from "./desk-fan";
import { DRAUGHT_LIMITS, draughtRatePct, USUAL_TURBULENCE_PCT } from "./draught-rate";
import type { FeltInputs } from "./felt-range";

/** What air moved at a speed is worth [K], by either way of counting one's own movement. */
export type FanEffect = { airSpeedMps: number; lowK: number; highK: number };

/** How much cooler moving air feels than the air that there was, for the middle of what is known of a person's surroundings. */
export function fanEffects(inputs: FeltInputs): FanEffect[] {
  const met = inputs.metabolicRateMet.middle;
  const effectAt = (airSpeedMps: number) =>
    coolingEffect({
      airTempC: inputs.airTempC.middle,
      radiantTempC: inputs.airTempC.middle + inputs.radiantOffsetK.middle,
      relAirSpeedMps: relativeAirSpeed(airSpeedMps, met),
      relHumidityPct: inputs.relHumidityPct.middle,
      metabolicRateMet: met,
      clothingClo: inputs.clothingClo.middle,
    });
  const before = effectAt(inputs.airSpeedMps.middle);
  return FAN_SPEEDS_MPS.map((airSpeedMps) => {
    const { lowK, highK } = effectAt(airSpeedMps);
    const [one, other] = [lowK - before.lowK, highK - before.highK];
    return { airSpeedMps, lowK: Math.min(one, other), highK: Math.max(one, other) };
  });
}

/** Share who would feel a draught [%] at the usual turbulence, and at the ends of what the model was made for. */
export type DraughtRange =
  | { status: "ok"; pct: number; lowPct: number; highPct: number }
  | { status: "outside-limits"; what: "air temperature" | "air speed"; low: number; high: number; unit: "°C" | "m/s" };

/** Draught rate of ISO 7730:2005, equation 6, with its range over the turbulence of 10 to 60 %; refused beyond its limits. */
export function draughtRange({ airTempC, airSpeedMps }: { airTempC: number; airSpeedMps: number }): DraughtRange {
  const [lowC, highC] = DRAUGHT_LIMITS.airTempC;
  const [lowMps, highMps] = DRAUGHT_LIMITS.airSpeedMps;
  if (!(airTempC >= lowC && airTempC <= highC))
    return { status: "outside-limits", what: "air temperature", low: lowC, high: highC, unit: "°C" };
  if (!(airSpeedMps >= lowMps && airSpeedMps <= highMps))
    return { status: "outside-limits", what: "air speed", low: lowMps, high: highMps, unit: "m/s" };
  const rateAt = (turbulencePct: number): number => draughtRatePct({ airTempC, airSpeedMps, turbulencePct });
  const [calm, rough] = DRAUGHT_LIMITS.turbulencePct;
  return { status: "ok", pct: rateAt(USUAL_TURBULENCE_PCT), lowPct: rateAt(calm), highPct: rateAt(rough) };
}
