/**
 * C2, electricity of the plant to remove the heat of the heaters [kWh]:
 * E1 · [w_cool + w_deadband · (1 - x_oa)] · m / COP (reference B1, B2 and I). All of it reaches the coil while the zone
 * is held by its setpoint; at minimum airflow the share x_oa leaves with exhausted air; in reheat it replaces reheat.
 */
export const heatRemovalKwh = (i: {
  heaterKwh: number;
  coolingShare: number;
  deadbandShare: number;
  outdoorAirFraction: number;
  mechanicalFraction: number;
  cop: number;
}): number =>
  (i.heaterKwh * (i.coolingShare + i.deadbandShare * (1 - i.outdoorAirFraction)) * i.mechanicalFraction) / i.cop;

/**
 * C2, heat that the plant need not buy because heaters replace reheat [kWh], negative: -E1 · w_reheat / efficiency.
 * Not to be used where reheat was measured: the measurement has the credit in it.
 */
export const reheatCreditKwh = (i: { heaterKwh: number; reheatShare: number; heatEfficiency: number }): number =>
  (-i.heaterKwh * i.reheatShare) / i.heatEfficiency;
