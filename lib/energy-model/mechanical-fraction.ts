/**
 * Share of the coil load that is met mechanically at one outdoor temperature (reference Q5). With an economizer:
 * clamp((T_o - T_sat) / (T_ra - T_sat), 0, 1); without one the plant carries all of it.
 */
export function mechanicalFraction(air: {
  outdoorAirTempC: number;
  supplyAirTempC: number;
  returnAirTempC: number;
  hasEconomizer: boolean;
}): number {
  if (!air.hasEconomizer) return 1;
  const fraction = (air.outdoorAirTempC - air.supplyAirTempC) / (air.returnAirTempC - air.supplyAirTempC);
  return Math.min(1, Math.max(0, fraction));
}
