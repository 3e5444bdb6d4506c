/** Temperature rise between air handler and box that is not the coil's [K] (reference D6, judgement there). */
export const DUCT_GAIN_K = 0.5;

/**
 * Heat that a reheat coil gives the air [kW], from the discharge trend: rho·cp · V · (DAT - SAT - duct gain), reference
 * D6. Never below 0. `airHeatKjPerM3K` is 1.206 at sea level; scale it by pressure above 500 m.
 */
export function reheatHeatFlowKw(now: {
  airflowM3ps: number;
  dischargeAirTempC: number;
  supplyAirTempC: number;
  airHeatKjPerM3K: number;
  ductGainK: number;
}): number {
  const riseK = now.dischargeAirTempC - now.supplyAirTempC - now.ductGainK;
  return Math.max(0, now.airHeatKjPerM3K * now.airflowM3ps * riseK);
}

/**
 * Heat and cooling that a zone in reheat buys only because its minimum airflow is above what it requires [kW]:
 * heat rho·cp · (V_min - V_req) · (T_hsp - T_sat), cooling rho·cp · (V_min - V_req) · (T_ra - T_sat) · m with the
 * mechanical cooling fraction m (0-1) of the economizer (reference D6). Both 0 when the minimum is not above.
 */
export function excessReheatKw(now: {
  minimumAirflowM3ps: number;
  requiredAirflowM3ps: number;
  heatingSetpointC: number;
  returnAirTempC: number;
  supplyAirTempC: number;
  mechanicalFraction: number;
  airHeatKjPerM3K: number;
}): { heatKw: number; coolingKw: number } {
  const excess = Math.max(0, now.minimumAirflowM3ps - now.requiredAirflowM3ps) * now.airHeatKjPerM3K;
  return {
    heatKw: excess * Math.max(0, now.heatingSetpointC - now.supplyAirTempC),
    coolingKw: excess * Math.max(0, now.returnAirTempC - now.supplyAirTempC) * now.mechanicalFraction,
  };
}
