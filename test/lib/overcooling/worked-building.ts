import { totalHeatLossKwPerK } from "@/lib/energy-model/balance-temperature";
import { fanPowerFraction } from "@/lib/energy-model/fan-power";
import { outdoorHours } from "@/lib/energy-model/outdoor-hours";
import { seasonCoolingLoadKwh } from "@/lib/energy-model/season-load";
import { complaintCost } from "@/lib/overcooling/components/complaints";
import { deadbandKwh } from "@/lib/overcooling/components/deadband";
import { demandKw } from "@/lib/overcooling/components/demand";
import { fanKwh, neededAirflow } from "@/lib/overcooling/components/fan";
import { heatRemovalKwh, reheatCreditKwh } from "@/lib/overcooling/components/heat-removal";
import { heaterEnergyKwh } from "@/lib/overcooling/components/heater-energy";
import { excessAirflowM3ps, reheatCoolingKwh, reheatHeatKwh } from "@/lib/overcooling/components/reheat";
import { setpointKwh } from "@/lib/overcooling/components/setpoint";
import { warmedZoneTempC } from "@/lib/overcooling/components/warmed-zone-temp";
import { thermsFromKwh } from "@/lib/units/energy";
import { GREENSBORO_C, WORKED_HOURS } from "./offices";

/** Inputs of the reference's worked building, section I, in its own names. */
export type WorkedInputs = {
  UA_env_kW_K: number;
  V_oa_m3_s: number;
  q_gain_kW: number;
  T_set0_C: number;
  T_target_C: number;
  T_sat_C: number;
  T_ra_C: number;
  COP_sys: number;
  s_COOL: number;
  s_DB: number;
  s_RH: number;
  Tz_DB_C: number;
  T_hsp_C: number;
  V_des_m3_s: number;
  frac_min: number;
  frac_req: number;
  PLR_cool0: number;
  W_fan_des_kW: number;
  eta_heat: number;
  heaters: {
    N: number;
    kWh_each: number;
    P_high_kW: number;
    f_oc: number;
    w_COOL: number;
    w_DB: number;
    w_RH: number;
    CF_peak: number;
  };
  peak: { s_COOL_peak: number; months: number };
  price: {
    elec_marginal: number;
    demand: number;
    gas_therm: number;
    complaint_h: number;
    labour: number;
    complaints: number;
  };
  ef: { elec: number; gas: number };
  /** Factors of the range: on m, and on the excess airflow. */
  mfac?: number;
  vfac?: number;
};

const hours = outdoorHours(GREENSBORO_C, WORKED_HOURS);

/** The worked building from the component functions, under the names of the check values. */
export function workedBuilding(i: WorkedInputs): Record<string, number> {
  const { heaters: h, price } = i;
  const air = { supplyAirTempC: i.T_sat_C, returnAirTempC: i.T_ra_C };
  const factor = i.mfac ?? 1;
  const heatLossKwPerK = totalHeatLossKwPerK({ envelopeKwPerK: i.UA_env_kW_K, outdoorAirflowM3ps: i.V_oa_m3_s });
  const seasonHours = hours.hoursAtOrAbove(i.T_sat_C);
  const mechanicalFraction = factor * hours.meanMechanicalFraction(air);
  const load = (setpointC: number): number =>
    factor *
    seasonCoolingLoadKwh(hours, {
      setpointC,
      internalGainKw: i.q_gain_kW,
      heatLossKwPerK,
      ...air,
      hasEconomizer: true,
    });
  const [loadAtPresentKwh, loadAtTargetKwh] = [load(i.T_set0_C), load(i.T_target_C)];
  const cop = i.COP_sys;

  const warmed = warmedZoneTempC({
    zoneAirTempC: i.Tz_DB_C,
    supplyAirTempC: i.T_sat_C,
    minimumAirflowM3ps: i.frac_min,
    requiredAirflowM3ps: i.frac_req,
    targetZoneAirTempC: i.T_target_C,
  });
  const excess =
    (i.vfac ?? 1) *
    excessAirflowM3ps({
      minimumAirflowM3ps: i.frac_min * i.V_des_m3_s,
      requiredAirflowM3ps: i.frac_req * i.V_des_m3_s,
    });
  const needs = (airflow: number, zoneAirTempC: number, warmedZoneAirTempC: number): number =>
    neededAirflow({
      airflow,
      requiredAirflow: i.frac_req,
      zoneAirTempC,
      warmedZoneAirTempC,
      supplyAirTempC: i.T_sat_C,
    });
  const fractionNow = i.s_COOL * i.PLR_cool0 + (i.s_DB + i.s_RH) * i.frac_min;
  const fractionNeeded =
    i.s_COOL * needs(i.PLR_cool0, i.T_set0_C, i.T_target_C) +
    i.s_DB * needs(i.frac_min, i.Tz_DB_C, warmed) +
    i.s_RH * i.frac_req;
  const outdoorAirFraction = i.V_oa_m3_s / (i.V_des_m3_s * fractionNow);

  const plugKwh = h.N * h.kWh_each;
  const heaterKwh = heaterEnergyKwh({ plugKwh, overcooledFraction: h.f_oc });
  const c2 = heatRemovalKwh({
    heaterKwh,
    coolingShare: h.w_COOL,
    deadbandShare: h.w_DB,
    outdoorAirFraction,
    mechanicalFraction,
    cop,
  });
  const credit = reheatCreditKwh({ heaterKwh, reheatShare: h.w_RH, heatEfficiency: i.eta_heat });
  const c3 = setpointKwh({ coolingShare: i.s_COOL, loadAtPresentKwh, loadAtTargetKwh, cop });
  const c4a = deadbandKwh({
    heatLossKwPerK,
    hours: i.s_DB * seasonHours,
    zoneAirTempC: i.Tz_DB_C,
    warmedZoneAirTempC: warmed,
    mechanicalFraction,
    cop,
  });
  const reheatHours = i.s_RH * seasonHours;
  const c4b = reheatCoolingKwh({ excessAirflowM3ps: excess, ...air, reheatHours, mechanicalFraction, cop });
  const reheatGas = reheatHeatKwh({
    excessAirflowM3ps: excess,
    heatingSetpointC: i.T_hsp_C,
    supplyAirTempC: i.T_sat_C,
    reheatHours,
    heatEfficiency: i.eta_heat,
  });
  const c5 = fanKwh({
    designPowerKw: i.W_fan_des_kW,
    hours: seasonHours,
    powerFraction: fanPowerFraction(fractionNow),
    neededPowerFraction: fanPowerFraction(fractionNeeded),
  });
  const demand = (heaterKw: number, belowTargetK: number): number =>
    demandKw({
      heaterKw,
      coincidence: h.CF_peak,
      heatLossKwPerK,
      belowTargetK,
      peakCoolingShare: i.peak.s_COOL_peak,
      cop,
    });
  const heaterKw = h.N * h.P_high_kW;
  const belowTargetK = i.T_target_C - i.T_set0_C;
  const c6 = demand(heaterKw, belowTargetK) * price.demand * i.peak.months;
  const c7 = complaintCost({
    reports: price.complaints,
    hoursEach: price.complaint_h,
    labourPricePerHour: price.labour,
  });

  const electric = { heater: heaterKwh, cooling: c2, setpoint: c3, deadband: c4a, reheat: c4b, fan: c5 };
  const electricKwh = Object.values(electric).reduce((sum, each) => sum + each, 0);
  const gasPrice = (kwh: number): number => thermsFromKwh(kwh) * price.gas_therm;
  const p = price.elec_marginal;
  return {
    "intermediate.UA_tot": heatLossKwPerK,
    "intermediate.H_s": seasonHours,
    "intermediate.m_bar": mechanicalFraction,
    "intermediate.E_th0": loadAtPresentKwh,
    "intermediate.E_th1": loadAtTargetKwh,
    "intermediate.x_oa": outdoorAirFraction,
    "intermediate.Tz_new_DB": warmed,
    "intermediate.dT_DB": warmed - i.Tz_DB_C,
    "intermediate.V_ex": excess,
    "intermediate.reheat_th": reheatGas * i.eta_heat,
    "intermediate.PLR0": fractionNow,
    "intermediate.PLR1": fractionNeeded,
    "intermediate.plug_total": plugKwh,
    "elec_kWh.C1_heater_plug": heaterKwh,
    "elec_kWh.C2_heater_cooling": c2,
    "elec_kWh.C3_setpoint_cooling": c3,
    "elec_kWh.C4a_deadband_cooling": c4a,
    "elec_kWh.C4b_reheat_cooling": c4b,
    "elec_kWh.C5_fan": c5,
    "gas_kWh.C2_credit": credit,
    "gas_kWh.C4b_reheat_gas": reheatGas,
    "dkW.heater": demand(heaterKw, 0) * (cop / (cop + 1)),
    "dkW.heater_cooling": demand(heaterKw, 0) / (cop + 1),
    "dkW.setpoint": demand(0, belowTargetK),
    "cost.C1_heater_plug": heaterKwh * p,
    "cost.C2_heater_cooling": c2 * p,
    "cost.C3_setpoint_cooling": c3 * p,
    "cost.C4a_deadband_cooling": c4a * p,
    "cost.C4b_reheat_cooling": c4b * p,
    "cost.C5_fan": c5 * p,
    "cost.C2_gas_credit": gasPrice(credit),
    "cost.C4b_gas": gasPrice(reheatGas),
    "cost.C6_demand": c6,
    "cost.C7_complaints": c7,
    "cost_by_fix.remove_heaters_C1C2": (heaterKwh + c2) * p + gasPrice(credit),
    "cost_by_fix.raise_setpoint_C3": c3 * p,
    "cost_by_fix.cut_min_airflow_C4": (c4a + c4b) * p + gasPrice(reheatGas),
    "cost_by_fix.fan_C5": c5 * p,
    "cost_by_fix.demand_C6": c6,
    "cost_by_fix.complaints_C7": c7,
    elec_kWh_total: electricKwh,
    total_cost: electricKwh * p + gasPrice(credit + reheatGas) + c6 + c7,
    kg_CO2: electricKwh * i.ef.elec + (credit + reheatGas) * i.ef.gas,
  };
}
