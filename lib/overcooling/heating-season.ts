import { exact, type Quantity, type Step, step, sum } from "./calculation/quantity";
import { rowLabel, rowSymbol, type TierModel } from "./component-model";
import type { Plant } from "./plant";

/**
 * What the space heaters cost outside the cooling season's occupied hours, less the heat that the building's own plant
 * then need not make (reference A7, B2): resistance heat at the price of electricity in place of the plant's. A zone
 * that is cold in winter has a heating problem, so this stands beside the cost of overcooling and never in it. Null
 * without space heaters.
 */
export function heatingSeasonCost(model: TierModel, plant: Plant, currency: string): Step | null {
  const heaters = model.components.find((each) => each.id === "heater-energy");
  const plugs = (heaters?.cells ?? []).flatMap((cell) => {
    const plug = cell.electric?.kind === "step" ? cell.electric.terms[0] : undefined;
    return plug ? [{ symbol: rowSymbol("K", cell.row), label: rowLabel(cell.row), quantity: plug }] : [];
  });
  if (plugs.length === 0) return null;
  const unit = "kWh a year";
  const winter = step({
    symbol: "W",
    label: "heater electricity outside the cooling season's occupied hours",
    unit,
    formula: "W = K * (1 - f_oc)",
    terms: [
      sum({ symbol: "K", label: "energy of the space heaters", unit, formula: "K = sum of the zones", parts: plugs }),
      plant.assumed.shared("heater-in-overcooled-hours-fraction", "f_oc"),
    ],
    compute: (all, overcooled) => all * (1 - overcooled),
  });
  const replaced = step({
    symbol: "R",
    label: "heat that the plant need not make meanwhile, as bought",
    unit,
    formula: "R = W * u_h / η",
    terms: [winter, plant.assumed.shared("heater-winter-useful-fraction", "u_h"), plant.heatEfficiency],
    compute: (kwh, useful, efficiency) => (kwh * useful) / efficiency,
  });
  const heatPrice: Quantity =
    plant.heatPrice ??
    exact({
      symbol: "p_h",
      label: "price of heat, not given",
      unit: `${currency}/kWh`,
      value: 0,
      origin: "computed",
      source: "no price in the building's settings: nothing is credited",
    });
  const electricityPrice = plant.electricityPrice;
  const price = heatPrice === electricityPrice ? electricityPrice : heatPrice;
  const terms = price === electricityPrice ? [winter, replaced, price] : [winter, replaced, electricityPrice, price];
  return step({
    symbol: "N",
    label: "net cost of space heaters outside the cooling season",
    unit: `${currency} a year`,
    formula: terms.length === 3 ? "N = (W - R) * p_e" : "N = W * p_e - R * p_h",
    terms,
    compute: (kwh, heat, electric, bought = electric) => kwh * electric - heat * bought,
    notes: ["Not part of the cost of overcooling: a zone that is cold in winter has a heating problem."],
  });
}
