import type { AssessmentInput } from "../assessment-input";
import { step } from "../calculation/quantity";
import { type Cell, componentOfBuilding, componentOfCells, type TierModel, tierModel } from "../component-model";
import { screeningKwh } from "../components/screening";
import type { Plant } from "../plant";
import type { Row } from "../rows";
import { floorArea, presentSetpoint } from "./estimate-quantities";
import { screeningHeatRemovalCell } from "./heater-cells";
import { complaintCell, demandCells } from "./people-and-peak-cells";

const present = <T>(each: T | null): each is T => each !== null;

/** Tier 0: a percentage a kelvin of an average office's cooling and fan energy, with the heaters found. */
export function screeningTier(
  input: AssessmentInput,
  plant: Plant,
  rows: readonly Row[],
  heaters: readonly Cell[],
): TierModel {
  const { currency } = input;
  return tierModel(
    0,
    [
      componentOfCells("heater-energy", heaters, currency),
      componentOfCells(
        "heat-removal",
        heaters.map((each) => screeningHeatRemovalCell(each, plant, currency)),
        currency,
      ),
      setpointByPercentage(input, plant, rows),
      componentOfCells(
        "demand",
        demandCells(rows, () => null, plant, input),
        currency,
      ),
      componentOfCells("complaints", rows.map((row) => complaintCell(row, input)).filter(present), currency),
    ],
    currency,
  );
}

function setpointByPercentage(input: AssessmentInput, plant: Plant, rows: readonly Row[]) {
  if (input.presentCoolingSetpointC === null) return null;
  const electric = step({
    symbol: "E_0",
    label: "cooling and fan electricity because of the setpoint",
    unit: "kWh a year",
    formula: "E_0 = A * (e_c + e_v) * (1 - (1 - x / 100)^max(0, T_t - T_set))",
    terms: [
      floorArea(input),
      plant.assumed.shared("cooling-end-use-intensity", "e_c"),
      plant.assumed.shared("ventilation-end-use-intensity", "e_v"),
      plant.assumed.shared(`setpoint-percent-per-kelvin/${input.systemType}`, "x"),
      plant.targetTemp,
      presentSetpoint(input.presentCoolingSetpointC, input.presentCoolingSetpointOrigin),
    ],
    compute: (floorAreaM2, coolingKwhPerM2, ventilationKwhPerM2, percentPerK, targetC, setpointC) =>
      screeningKwh({
        floorAreaM2,
        coolingKwhPerM2,
        ventilationKwhPerM2,
        percentPerK,
        belowTargetK: Math.max(0, targetC - setpointC),
      }),
    notes: ["The percentage stands for setpoint, minimum airflow and fan together; none of them is counted again."],
  });
  const energy = { electric, heat: null };
  return componentOfBuilding("setpoint-screening", energy, plant, input.currency, rows);
}
