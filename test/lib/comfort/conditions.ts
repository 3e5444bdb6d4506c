import type { ThermalCondition } from "@/lib/comfort/thermal-condition";

/** Inputs as the check values name them. */
export type Inputs = { ta: number; tr: number; vr?: number; v?: number; rh: number; met: number; clo: number };

export const conditionOf = ({ ta, tr, vr, v, rh, met, clo }: Inputs): ThermalCondition => ({
  airTempC: ta,
  radiantTempC: tr,
  relAirSpeedMps: vr ?? v ?? Number.NaN,
  relHumidityPct: rh,
  metabolicRateMet: met,
  clothingClo: clo,
});
