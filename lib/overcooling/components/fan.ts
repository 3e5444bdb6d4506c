/**
 * C5, fan electricity for air that a warmer zone would not need [kWh]: W_des · hours · [f(r_0) - f(r_1)] (reference I),
 * f the part-load curve at the airflow now and at the airflow needed. Not for fans of constant volume.
 */
export const fanKwh = (i: {
  designPowerKw: number;
  hours: number;
  powerFraction: number;
  neededPowerFraction: number;
}): number => i.designPowerKw * i.hours * (i.powerFraction - i.neededPowerFraction);

/** Airflow that carries the same heat into a warmer zone: V · (T_z - T_sat) / (T' - T_sat), not below what ventilation needs and not above V. */
export function neededAirflow(i: {
  airflow: number;
  requiredAirflow: number;
  zoneAirTempC: number;
  warmedZoneAirTempC: number;
  supplyAirTempC: number;
}): number {
  const carried = (i.airflow * (i.zoneAirTempC - i.supplyAirTempC)) / (i.warmedZoneAirTempC - i.supplyAirTempC);
  return Math.min(i.airflow, Math.max(i.requiredAirflow, carried));
}
