import { AIR_HEAT_KJ_PER_M3K } from "./air-heat";

/** Heat loss coefficient of envelope and outdoor air together [kW/K]: UA + rho·cp · V_oa (reference Q1). */
export const totalHeatLossKwPerK = (building: { envelopeKwPerK: number; outdoorAirflowM3ps: number }): number =>
  building.envelopeKwPerK + AIR_HEAT_KJ_PER_M3K * building.outdoorAirflowM3ps;

/**
 * Outdoor temperature [°C] above which a space at its cooling setpoint needs cooling: T_set - q / UA (reference Q1).
 * Steady state, sensible heat only; `heatLossKwPerK` must be above 0.
 */
export const balanceTempC = (space: { setpointC: number; internalGainKw: number; heatLossKwPerK: number }): number =>
  space.setpointC - space.internalGainKw / space.heatLossKwPerK;
