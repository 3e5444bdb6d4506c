import { type Quantity, type Step, step } from "../calculation/quantity";
import type { Plant } from "../plant";

/** Share of the return air that is exhausted because outdoor air replaces it: V_oa over the supply airflow, at most 1. */
export const outdoorAirFraction = (
  i: { area: Quantity; airflowFraction: Quantity; design: Quantity },
  plant: Plant,
): Step =>
  step({
    symbol: "x_oa",
    label: "share of the return air that is exhausted",
    unit: "",
    formula: "x_oa = min(1, o * A / (r_0 * V_des))",
    terms: [plant.assumed.shared("outdoor-airflow-per-area", "o"), i.area, i.airflowFraction, i.design],
    compute: (perArea, area, fraction, design) => Math.min(1, (perArea * area) / (fraction * design)),
  });
