import { balanceTempC } from "./balance-temperature";
import type { EconomizerAir, OutdoorHours } from "./outdoor-hours";

/**
 * Sensible cooling load of a season that the plant meets [kWh of heat]: UA · sum of m(T_o) · max(0, T_o - T_bal) over
 * the occupied hours (reference Q2 with Q5). Without an economizer m is 1. Sensible only, no change of supply air
 * temperature, and true only while the space is held at its cooling setpoint (reference Q6).
 */
export function seasonCoolingLoadKwh(
  hours: OutdoorHours,
  space: EconomizerAir & {
    setpointC: number;
    internalGainKw: number;
    heatLossKwPerK: number;
    hasEconomizer: boolean;
  },
): number {
  const baseC = balanceTempC(space);
  const weighted = space.hasEconomizer ? hours.mechanicalDegreeHours({ ...space, baseC }) : hours.degreeHours(baseC);
  return space.heatLossKwPerK * weighted;
}
