import { COMPONENT_LABELS, type ComponentId } from "./assessment";
import { type Quantity, type Step, type Sum, step, sum } from "./calculation/quantity";
import { NUMBERS, type TierModel } from "./component-model";
import { firstYearFraction } from "./components/first-year-fraction";
import type { Plant } from "./plant";

/** Components that go with the heaters: they are saved only as far as people give them up. */
const OF_THE_HEATERS: readonly ComponentId[] = ["heater-energy", "heat-removal"];

/**
 * What of the cost changes would save in their first year (reference I, rule 7; G7): heaters do not vanish by
 * themselves, and setpoints drift back. Zones with a fix in progress are left out, since their saving is promised
 * already (rule 8). The demand charge is part heaters, part setpoint, and takes the lower of both shares.
 */
export function avoidableCost(model: TierModel, plant: Plant): Sum {
  const removed = plant.assumed.shared("heater-removal-fraction", "r_h");
  const kept = step({
    symbol: "r_s",
    label: "share of the first year in which a change lasts",
    unit: "",
    formula: "r_s = L * (1 - exp(-1 / L))",
    terms: [plant.assumed.shared("change-life", "L")],
    compute: firstYearFraction,
    notes: ["A change is undone at a steady rate, once in L years on average."],
  });
  const lower = step({
    symbol: "r_d",
    label: "lower of both shares",
    unit: "",
    formula: "r_d = min(r_h, r_s)",
    terms: [removed, kept],
    compute: (heaters, change) => Math.min(heaters, change),
  });
  const parts = model.components.map((each) => {
    const share: Quantity = OF_THE_HEATERS.includes(each.id) ? removed : each.id === "demand" ? lower : kept;
    return {
      symbol: `A_${NUMBERS[each.id]}`,
      label: COMPONENT_LABELS[each.id],
      quantity: part(each.id, open(model, each.id), share),
    };
  });
  return sum({
    symbol: "A",
    label: "cost that changes would save in their first year",
    unit: model.total.unit,
    formula: "A = sum of the components",
    parts,
  });
}

/** A component's cost in the zones without a fix in progress. */
function open(model: TierModel, id: ComponentId): Quantity {
  const component = model.components.find((each) => each.id === id);
  if (!component) throw new Error(`the model has no component "${id}"`);
  const cells = component.cells.filter((each) => !each.row.zone?.fixInProgress);
  if (cells.length === component.cells.length) return component.money;
  return sum({
    symbol: `C_${NUMBERS[id]}`,
    label: `cost of ${COMPONENT_LABELS[id]} in zones without a fix in progress`,
    unit: model.total.unit,
    formula: `C_${NUMBERS[id]} = sum of those zones`,
    parts: cells.map((each) => ({ symbol: `C_{${each.row.code}}`, label: each.row.code, quantity: each.money })),
  });
}

const part = (id: ComponentId, cost: Quantity, share: Quantity): Step =>
  step({
    symbol: `A_${NUMBERS[id]}`,
    label: `${COMPONENT_LABELS[id]}, saved in the first year`,
    unit: cost.unit,
    formula: `A_${NUMBERS[id]} = ${share.symbol} * ${cost.symbol}`,
    terms: [share, cost],
    compute: (fraction, money) => fraction * money,
  });
