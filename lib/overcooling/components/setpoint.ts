/**
 * C3 from degree-hours of weather, electricity for the setpoint below the target [kWh]:
 * s_cool · [E(T_set) - E(T_target)] / COP with the season's loads E of the plant, heaters left out of the gains
 * (reference I). 0 where the present setpoint is at or above the target.
 */
export const setpointKwh = (i: {
  coolingShare: number;
  loadAtPresentKwh: number;
  loadAtTargetKwh: number;
  cop: number;
}): number => (i.coolingShare * Math.max(0, i.loadAtPresentKwh - i.loadAtTargetKwh)) / i.cop;

/**
 * C3 from measured zones [kWh]: UA · K·h · m / COP. First-order identity of the balance (reference Q3, Q8): a setpoint
 * moves the balance temperature one for one, so each kelvin-hour below the target costs UA, whatever the gains.
 */
export const measuredSetpointKwh = (i: {
  heatLossKwPerK: number;
  overcoolingKh: number;
  mechanicalFraction: number;
  cop: number;
}): number => (i.heatLossKwPerK * i.overcoolingKh * i.mechanicalFraction) / i.cop;
