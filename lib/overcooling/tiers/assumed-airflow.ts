import type { VavSystemType } from "@/lib/assumptions/system-type";
import type { AssessmentInput } from "../assessment-input";
import { type Quantity, type Step, step } from "../calculation/quantity";
import { type ComponentModel, componentOfBuilding } from "../component-model";
import { fanKwh } from "../components/fan";
import type { Plant, PlantWeather } from "../plant";
import type { Row } from "../rows";
import {
  deadbandElectricity,
  excessAirflow,
  needed,
  powerFraction,
  reheatEnergy,
  warmedZoneTemp,
} from "./airflow-steps";
import { floorArea } from "./estimate-quantities";
import { outdoorAirFraction } from "./outdoor-air-fraction";

/** Airflows of a VAV building by assumption, for the estimate without zone trends. */
export type AssumedAirflow = {
  heatLoss: Quantity;
  setpoint: Quantity;
  design: Step;
  minimumFraction: Quantity;
  requiredFraction: Quantity;
  deadbandTemp: Step;
  warmed: Step;
  excess: Step;
  airflowFraction: Step;
  outdoorAirFraction: Step;
  /** Airflow while cooling and between the setpoints that the target needs, share of design. */
  coolingNeeded: Step;
  deadbandNeeded: Step;
  /** Share of the air that is not needed that is moved while zones cool. */
  fanWhileCooling: Step;
};

const product = (symbol: string, label: string, [a, b]: [Quantity, Quantity]): Step =>
  step({
    symbol,
    label,
    unit: "m³/s",
    formula: `${symbol} = ${a.symbol} * ${b.symbol}`,
    terms: [a, b],
    compute: (one, other) => one * other,
  });

export function assumedAirflow(
  input: AssessmentInput,
  plant: Plant,
  heatLoss: Quantity,
  setpoint: Quantity,
  system: VavSystemType,
): AssumedAirflow {
  const { assumed, stateShare } = plant;
  const design = product("V_des", "design airflow of the building", [
    assumed.shared("design-airflow-per-area", "v"),
    floorArea(input),
  ]);
  const minimumFraction = assumed.shared(`minimum-airflow-fraction/${system}`, "r_min");
  const requiredFraction = assumed.shared("required-airflow-fraction", "r_req");
  const minimum = product("V_min", "minimum airflow of the building", [minimumFraction, design]);
  const required = product("V_req", "required airflow of the building", [requiredFraction, design]);
  const deadbandTemp = step({
    symbol: "T_d",
    label: "zone air at minimum airflow",
    unit: "°C",
    formula: "T_d = T_set - d",
    terms: [setpoint, assumed.shared("deadband-depth", "d")],
    compute: (setpointC, depthK) => setpointC - depthK,
  });
  const coolingFraction = assumed.shared("cooling-airflow-fraction", "r_c");
  const airflowFraction = step({
    symbol: "r_0",
    label: "mean airflow of the season, share of design",
    unit: "",
    formula: "r_0 = s_c * r_c + (s_d + s_r) * r_min",
    terms: [stateShare.cooling, stateShare.deadband, stateShare.reheat, coolingFraction, minimumFraction],
    compute: (cooling, deadband, reheat, whileCooling, least) => cooling * whileCooling + (deadband + reheat) * least,
  });
  const warmed = warmedZoneTemp(deadbandTemp, minimum, required, plant, "");
  const coolingNeeded = needed(
    {
      airflow: coolingFraction,
      required: requiredFraction,
      zoneTemp: setpoint,
      warmTemp: plant.targetTemp,
      symbol: "r_c1",
      label: "airflow while cooling that the target needs, share of design",
    },
    plant,
  );
  const deadbandNeeded = needed(
    {
      airflow: minimumFraction,
      required: requiredFraction,
      zoneTemp: deadbandTemp,
      warmTemp: warmed,
      symbol: "r_d1",
      label: "airflow between the setpoints that is needed, share of design",
    },
    plant,
  );
  return {
    heatLoss,
    setpoint,
    design,
    minimumFraction,
    requiredFraction,
    deadbandTemp,
    warmed,
    excess: excessAirflow(minimum, required, ""),
    airflowFraction,
    outdoorAirFraction: outdoorAirFraction({ area: floorArea(input), airflowFraction, design }, plant),
    coolingNeeded,
    deadbandNeeded,
    fanWhileCooling: step({
      symbol: "x_c",
      label: "share of the air that is not needed that is moved while zones cool",
      unit: "",
      formula:
        "x_c = s_c * (r_c - r_c1) / max(0.000001, s_c * (r_c - r_c1) + s_d * (r_min - r_d1) + s_r * max(0, r_min - r_req))",
      terms: [
        stateShare.cooling,
        coolingFraction,
        coolingNeeded,
        stateShare.deadband,
        minimumFraction,
        deadbandNeeded,
        stateShare.reheat,
        requiredFraction,
      ],
      compute: (c, cool, coolLess, d, least, less, r, requiredLeast) => {
        const cooling = c * (cool - coolLess);
        return cooling / Math.max(1e-6, cooling + d * (least - less) + r * Math.max(0, least - requiredLeast));
      },
    }),
  };
}

/** C4a, C4b and C5 of the building. */
export function airflowComponents(
  input: AssessmentInput,
  plant: Plant & { weather: PlantWeather },
  rows: readonly Row[],
  airflow: AssumedAirflow,
): ComponentModel[] {
  const { seasonHours, mechanicalFraction } = plant.weather;
  const hoursOf = (symbol: string, share: Quantity, label: string): Step =>
    step({
      symbol,
      label,
      unit: "h",
      formula: `${symbol} = ${share.symbol} * H_s`,
      terms: [share, seasonHours],
      compute: (part, all) => part * all,
    });
  const deadbandHours = hoursOf("H_d", plant.stateShare.deadband, "season hours at minimum airflow");
  const reheatHours = hoursOf("H_r", plant.stateShare.reheat, "season hours in reheat");
  const heatingSetpoint = plant.assumed.shared("heating-setpoint", "T_hsp");
  const deadband = {
    electric: deadbandElectricity({ ...airflow, hours: deadbandHours, mechanicalFraction }, plant, ""),
    heat: null,
  };
  const reheat = reheatEnergy({ excess: airflow.excess, reheatHours, heatingSetpoint, mechanicalFraction }, plant, "");
  const fan = { electric: fanElectricity(plant, airflow), heat: null };
  const whole = (id: "deadband" | "reheat" | "fan", energy: { electric: Step; heat: Step | null }): ComponentModel =>
    componentOfBuilding(id, energy, plant, input.currency, rows);
  return [whole("deadband", deadband), whole("reheat", reheat), whole("fan", fan)];
}

function fanElectricity(plant: Plant & { weather: PlantWeather }, airflow: AssumedAirflow): Step {
  const { assumed, stateShare } = plant;
  const neededFraction = step({
    symbol: "r_1",
    label: "mean airflow of the season that is needed, share of design",
    unit: "",
    formula: "r_1 = s_c * r_c1 + s_d * r_d1 + s_r * min(r_min, r_req)",
    terms: [
      stateShare.cooling,
      airflow.coolingNeeded,
      stateShare.deadband,
      airflow.deadbandNeeded,
      stateShare.reheat,
      airflow.minimumFraction,
      airflow.requiredFraction,
    ],
    compute: (c, cooling, d, deadband, r, minimum, required) =>
      c * cooling + d * deadband + r * Math.min(minimum, required),
  });
  return step({
    symbol: "E_5",
    label: "fan electricity for excess air",
    unit: "kWh a year",
    formula: "E_5 = k_f * w_f * V_des * H_s * (f_0 - f_1)",
    terms: [
      assumed.shared("fan-saving-factor", "k_f"),
      assumed.shared("fan-power-per-airflow", "w_f"),
      airflow.design,
      plant.weather.seasonHours,
      powerFraction("f_0", airflow.airflowFraction, "share of design power at the present airflow"),
      powerFraction("f_1", neededFraction, "share of design power at the airflow needed"),
    ],
    compute: (factor, kwPerM3ps, designM3ps, hours, power, neededPower) =>
      fanKwh({
        designPowerKw: factor * kwPerM3ps * designM3ps,
        hours,
        powerFraction: power,
        neededPowerFraction: neededPower,
      }),
  });
}
