import { sensibleHeatKw } from "@/lib/energy-model/air-heat";

/** Air above what the zone needs, V_min - V_req [m³/s]; 0 where the minimum is not above. */
export const excessAirflowM3ps = (i: { minimumAirflowM3ps: number; requiredAirflowM3ps: number }): number =>
  Math.max(0, i.minimumAirflowM3ps - i.requiredAirflowM3ps);

/** C4b, electricity to cool air that is then reheated [kWh]: rho·cp · V_ex · (T_ra - T_sat) · hours · m / COP (reference D6 and I). */
export const reheatCoolingKwh = (i: {
  excessAirflowM3ps: number;
  returnAirTempC: number;
  supplyAirTempC: number;
  reheatHours: number;
  mechanicalFraction: number;
  cop: number;
}): number =>
  (sensibleHeatKw({
    airflowM3ps: i.excessAirflowM3ps,
    differenceK: Math.max(0, i.returnAirTempC - i.supplyAirTempC),
  }) *
    i.reheatHours *
    i.mechanicalFraction) /
  i.cop;

/** C4b, heat bought to warm that air up again [kWh]: rho·cp · V_ex · (T_hsp - T_sat) · hours / efficiency. */
export const reheatHeatKwh = (i: {
  excessAirflowM3ps: number;
  heatingSetpointC: number;
  supplyAirTempC: number;
  reheatHours: number;
  heatEfficiency: number;
}): number =>
  (sensibleHeatKw({
    airflowM3ps: i.excessAirflowM3ps,
    differenceK: Math.max(0, i.heatingSetpointC - i.supplyAirTempC),
  }) *
    i.reheatHours) /
  i.heatEfficiency;
