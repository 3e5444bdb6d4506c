import { compoundedSavingFraction } from "@/lib/energy-model/percent-per-kelvin";

/**
 * Tier 0, electricity for cooling and fans because of the setpoint [kWh]: A · (cooling + ventilation intensity) ·
 * [1 - (1 - x)^dT] (reference C-iii). It stands for C3, C4 and C5 together and is never added to them.
 */
export const screeningKwh = (i: {
  floorAreaM2: number;
  coolingKwhPerM2: number;
  ventilationKwhPerM2: number;
  percentPerK: number;
  belowTargetK: number;
}): number =>
  i.floorAreaM2 *
  (i.coolingKwhPerM2 + i.ventilationKwhPerM2) *
  compoundedSavingFraction({ fractionPerK: i.percentPerK / 100, riseK: i.belowTargetK });
