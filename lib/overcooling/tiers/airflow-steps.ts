import { FAN_CURVE, FAN_FLOOR_FRACTION, fanPowerFraction } from "@/lib/energy-model/fan-power";
import { type Quantity, type Step, step } from "../calculation/quantity";
import { deadbandKwh } from "../components/deadband";
import { neededAirflow } from "../components/fan";
import { excessAirflowM3ps, reheatCoolingKwh, reheatHeatKwh } from "../components/reheat";
import { warmedZoneTempC } from "../components/warmed-zone-temp";
import type { Plant } from "../plant";

/** Steps that the estimate for the building and the one for a measured zone share. `of` ends the labels. */

export const excessAirflow = (minimum: Quantity, required: Quantity, of: string): Step =>
  step({
    symbol: "V_ex",
    label: `minimum airflow above the required${of}`,
    unit: "m³/s",
    formula: "V_ex = max(0, V_min - V_req)",
    terms: [minimum, required],
    compute: (minimumAirflowM3ps, requiredAirflowM3ps) =>
      excessAirflowM3ps({ minimumAirflowM3ps, requiredAirflowM3ps }),
    notes: ["The required airflow must be checked by an engineer before any minimum is changed."],
  });

export const warmedZoneTemp = (
  deadbandTemp: Quantity,
  minimum: Quantity,
  required: Quantity,
  plant: Plant,
  of: string,
): Step =>
  step({
    symbol: "T_w",
    label: `zone air at the required airflow, no warmer than the target${of}`,
    unit: "°C",
    formula: "T_w = max(T_d, min(T_t, T_sat + (T_d - T_sat) * max(V_min, V_req) / V_req))",
    terms: [deadbandTemp, plant.targetTemp, plant.supplyAirTemp, minimum, required],
    compute: (zoneAirTempC, targetZoneAirTempC, supplyAirTempC, minimumAirflowM3ps, requiredAirflowM3ps) =>
      warmedZoneTempC({ zoneAirTempC, targetZoneAirTempC, supplyAirTempC, minimumAirflowM3ps, requiredAirflowM3ps }),
    notes: ["The zone's sensible load is taken as unchanged."],
  });

export const deadbandElectricity = (
  i: { heatLoss: Quantity; hours: Quantity; deadbandTemp: Quantity; warmed: Quantity; mechanicalFraction: Quantity },
  plant: Plant,
  of: string,
): Step =>
  step({
    symbol: "E_4a",
    label: `cooling electricity for zones cold at minimum airflow${of}`,
    unit: "kWh a year",
    formula: `E_4a = ${i.heatLoss.symbol} * ${i.hours.symbol} * max(0, T_w - T_d) * m / COP`,
    terms: [i.heatLoss, i.hours, i.deadbandTemp, i.warmed, i.mechanicalFraction, plant.cop],
    compute: (heatLossKwPerK, hours, zoneAirTempC, warmedZoneAirTempC, mechanicalFraction, cop) =>
      deadbandKwh({ heatLossKwPerK, hours, zoneAirTempC, warmedZoneAirTempC, mechanicalFraction, cop }),
    notes: [
      "Most of the excess air removes real gains; only the heat that a colder zone draws from outdoors is waste.",
    ],
  });

export function reheatEnergy(
  i: { excess: Quantity; reheatHours: Quantity; heatingSetpoint: Quantity; mechanicalFraction: Quantity },
  plant: Plant,
  of: string,
): { electric: Step; heat: Step } {
  const { excess, reheatHours, heatingSetpoint, mechanicalFraction } = i;
  return {
    electric: step({
      symbol: "E_4b",
      label: `electricity to cool air that is then reheated${of}`,
      unit: "kWh a year",
      formula: `E_4b = c_a * V_ex * max(0, T_ra - T_sat) * ${reheatHours.symbol} * m / COP`,
      terms: [
        plant.airHeat,
        excess,
        plant.returnAirTemp,
        plant.supplyAirTemp,
        reheatHours,
        mechanicalFraction,
        plant.cop,
      ],
      compute: (_airHeat, excessM3ps, returnAirTempC, supplyAirTempC, hours, fraction, cop) =>
        reheatCoolingKwh({
          excessAirflowM3ps: excessM3ps,
          returnAirTempC,
          supplyAirTempC,
          reheatHours: hours,
          mechanicalFraction: fraction,
          cop,
        }),
    }),
    heat: step({
      symbol: "Q_4b",
      label: `heat bought to reheat it${of}`,
      unit: "kWh a year",
      formula: `Q_4b = c_a * V_ex * max(0, T_hsp - T_sat) * ${reheatHours.symbol} / η`,
      terms: [plant.airHeat, excess, heatingSetpoint, plant.supplyAirTemp, reheatHours, plant.heatEfficiency],
      compute: (_airHeat, excessM3ps, heatingSetpointC, supplyAirTempC, hours, heatEfficiency) =>
        reheatHeatKwh({
          excessAirflowM3ps: excessM3ps,
          heatingSetpointC,
          supplyAirTempC,
          reheatHours: hours,
          heatEfficiency,
        }),
    }),
  };
}

/** Airflow, or fraction of design, that a warmer zone needs. The symbols are the caller's, since it stands for several states. */
export const needed = (
  i: { airflow: Quantity; required: Quantity; zoneTemp: Quantity; warmTemp: Quantity; symbol: string; label: string },
  plant: Plant,
): Step => {
  const [v, r, z, w] = [i.airflow.symbol, i.required.symbol, i.zoneTemp.symbol, i.warmTemp.symbol];
  return step({
    symbol: i.symbol,
    label: i.label,
    unit: i.airflow.unit,
    formula: `${i.symbol} = min(${v}, max(${r}, ${v} * (${z} - T_sat) / (${w} - T_sat)))`,
    terms: [i.airflow, i.required, i.zoneTemp, i.warmTemp, plant.supplyAirTemp],
    compute: (airflow, requiredAirflow, zoneAirTempC, warmedZoneAirTempC, supplyAirTempC) =>
      neededAirflow({ airflow, requiredAirflow, zoneAirTempC, warmedZoneAirTempC, supplyAirTempC }),
  });
};

export const powerFraction = (symbol: string, airflowFraction: Quantity, label: string): Step => {
  const x = `min(1, max(${FAN_FLOOR_FRACTION}, ${airflowFraction.symbol}))`;
  const [a, b, c, d] = FAN_CURVE;
  return step({
    symbol,
    label,
    unit: "",
    formula: `${symbol} = ${a} + ${b} * ${x} + ${c} * ${x}^2 - ${-d} * ${x}^3`,
    terms: [airflowFraction],
    compute: fanPowerFraction,
    source: "ASHRAE 90.1 Appendix G, part-load curve of variable-speed fans (from memory); floor after ComStock",
  });
};
