import { isVav } from "@/lib/assumptions/system-type";
import { seasonCoolingLoadKwh } from "@/lib/energy-model/season-load";
import type { AssessmentInput } from "../assessment-input";
import { exact, type Quantity, type Step, step } from "../calculation/quantity";
import {
  type Cell,
  type ComponentModel,
  componentOfBuilding,
  componentOfCells,
  type TierModel,
  tierModel,
} from "../component-model";
import { setpointKwh } from "../components/setpoint";
import type { Plant, PlantWeather } from "../plant";
import type { Row } from "../rows";
import { type AssumedAirflow, airflowComponents, assumedAirflow } from "./assumed-airflow";
import { floorArea, presentSetpoint } from "./estimate-quantities";
import { zoneHeatLoss } from "./heat-loss";
import { heatRemovalCell } from "./heater-cells";
import { complaintCell, demandCells } from "./people-and-peak-cells";

const present = <T>(each: T | null): each is T => each !== null;

/** Tier 1: degree-hours of the weather year with assumed shares of the states; needs a stated present cooling setpoint. */
export function estimateTier(
  input: AssessmentInput,
  plant: Plant & { weather: PlantWeather },
  rows: readonly Row[],
  heaters: readonly Cell[],
  presentCoolingSetpointC: number,
): TierModel {
  const { currency } = input;
  const setpoint = presentSetpoint(presentCoolingSetpointC, input.presentCoolingSetpointOrigin);
  const heatLoss = buildingHeatLoss(input, plant);
  const airflow = isVav(input.systemType) ? assumedAirflow(input, plant, heatLoss, setpoint, input.systemType) : null;
  const split = {
    ...plant.stateShare,
    outdoorAirFraction: airflow?.outdoorAirFraction ?? noAirExhausted(),
    mechanicalFraction: plant.weather.mechanicalFraction,
    reheatMeasured: false,
  };
  const belowTarget = step({
    symbol: "dT",
    label: "present cooling setpoint below the target",
    unit: "K",
    formula: "dT = max(0, T_t - T_set)",
    terms: [plant.targetTemp, setpoint],
    compute: (targetC, setpointC) => Math.max(0, targetC - setpointC),
  });
  const demand = demandCells(rows, (row) => ({ heatLoss: zoneHeatLoss(row, plant), belowTarget }), plant, input);
  return tierModel(
    1,
    [
      componentOfCells("heater-energy", heaters, currency),
      componentOfCells(
        "heat-removal",
        heaters.map((each) => heatRemovalCell(each, split, plant, currency)),
        currency,
      ),
      setpointComponent(input, plant, rows, heatLoss, setpoint),
      ...(airflow ? airflowComponents(input, plant, rows, airflow) : []),
      componentOfCells("demand", demand, currency),
      componentOfCells("complaints", rows.map((row) => complaintCell(row, input)).filter(present), currency),
    ],
    currency,
    { rise: assumedRise(plant, belowTarget, airflow), fanWhileCooling: airflow?.fanWhileCooling ?? null },
  );
}

function assumedRise({ stateShare }: Plant, belowTarget: Quantity, airflow: AssumedAirflow | null): Step {
  const shared = {
    symbol: "dT_m",
    label: "rise of the building's mean zone air at the target, over the season hours",
    unit: "K",
  };
  if (!airflow) {
    return step({
      ...shared,
      formula: "dT_m = s_c * dT",
      terms: [stateShare.cooling, belowTarget],
      compute: (share, each) => share * each,
    });
  }
  return step({
    ...shared,
    formula: "dT_m = s_c * dT + s_d * max(0, T_w - T_d)",
    terms: [stateShare.cooling, belowTarget, stateShare.deadband, airflow.warmed, airflow.deadbandTemp],
    compute: (cooling, each, deadband, warmedC, presentC) =>
      cooling * each + deadband * Math.max(0, warmedC - presentC),
  });
}

const noAirExhausted = (): Quantity =>
  exact({
    symbol: "x_oa",
    label: "share of return air exhausted",
    unit: "",
    value: 0,
    origin: "computed",
    source: "no time at minimum airflow in this kind of system",
  });

function buildingHeatLoss(input: AssessmentInput, plant: Plant): Step {
  return step({
    symbol: "UA",
    label: "heat loss coefficient of the building",
    unit: "kW/K",
    formula: "UA = u * A / 1000",
    terms: [plant.heatLossPerArea, floorArea(input)],
    compute: (perArea, area) => (perArea * area) / 1000,
  });
}

function setpointComponent(
  input: AssessmentInput,
  plant: Plant & { weather: PlantWeather },
  rows: readonly Row[],
  heatLoss: Step,
  setpoint: Quantity,
): ComponentModel {
  const gain = step({
    symbol: "q",
    label: "internal gains in occupied hours, without space heaters",
    unit: "kW",
    formula: "q = g * A / 1000",
    terms: [plant.assumed.shared("internal-gain-per-area", "g"), floorArea(input)],
    compute: (perArea, area) => (perArea * area) / 1000,
  });
  const { hours, economizerFactor } = plant.weather;
  const load = (symbol: string, label: string, at: Quantity): Step =>
    step({
      symbol,
      label,
      unit: "kWh a year",
      formula: `${symbol} = UA * f_m * sum of m(T_o) * max(0, T_o - (${at.symbol} - q / UA)) over the occupied hours`,
      terms: [heatLoss, economizerFactor, gain, at, plant.supplyAirTemp, plant.returnAirTemp],
      compute: (heatLossKwPerK, factor, internalGainKw, setpointC, supplyAirTempC, returnAirTempC) =>
        factor *
        seasonCoolingLoadKwh(hours, {
          setpointC,
          internalGainKw,
          heatLossKwPerK,
          supplyAirTempC,
          returnAirTempC,
          hasEconomizer: input.hasEconomizer,
        }),
      notes: [
        input.hasEconomizer
          ? "m(T_o) = min(1, max(0, (T_o - T_sat) / (T_ra - T_sat))): below it the economizer cools."
          : "m(T_o) = 1: without an economizer the plant carries all of the load.",
      ],
    });
  const electric = step({
    symbol: "E_3",
    label: "cooling electricity for the setpoint below the target",
    unit: "kWh a year",
    formula: "E_3 = s_c * max(0, Q_0 - Q_1) / COP",
    terms: [
      plant.stateShare.cooling,
      load("Q_0", "cooling load of the season at the present setpoint", setpoint),
      load("Q_1", "cooling load of the season at the target", plant.targetTemp),
      plant.cop,
    ],
    compute: (coolingShare, loadAtPresentKwh, loadAtTargetKwh, cop) =>
      setpointKwh({ coolingShare, loadAtPresentKwh, loadAtTargetKwh, cop }),
    notes: ["Only hours in which zones are held by the cooling setpoint; sensible heat only."],
  });
  const energy = { electric, heat: null };
  return componentOfBuilding("setpoint", energy, plant, input.currency, rows);
}
