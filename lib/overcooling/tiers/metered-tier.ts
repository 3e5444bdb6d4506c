import type { ComponentId } from "../assessment";
import type { AssessmentInput, MeteredSaving } from "../assessment-input";
import { type Quantity, type Step, step, sum } from "../calculation/quantity";
import { type ComponentModel, NUMBERS, type TierModel, tierModel } from "../component-model";
import type { Plant } from "../plant";

/**
 * Components whose electricity is inside what the meter's change-point model says a warmer setpoint saves: the cooling
 * and fan electricity of the plant (reference I, rule 4). The heaters' own plug energy stands in the meter's base load
 * and bought heat on a meter of its own.
 */
const IN_THE_METER: readonly ComponentId[] = ["heat-removal", "setpoint", "deadband", "reheat", "fan"];

/**
 * Tier 3: the electricity of cooling and fans is what the meter says, and the model below it only splits it over
 * components and zones. Adding the two up would count the same kWh twice.
 */
export function meteredTier(input: AssessmentInput, plant: Plant, below: TierModel, saving: MeteredSaving): TierModel {
  const metered = meteredElectricity(saving);
  const split = below.components.flatMap((each) =>
    IN_THE_METER.includes(each.id) && each.electric
      ? [{ symbol: each.electric.symbol, label: each.electric.label, quantity: each.electric }]
      : [],
  );
  if (split.length === 0) return below;
  const factor = step({
    symbol: "k",
    label: "metered cooling and fan electricity over the modelled",
    unit: "",
    formula: "k = S / E_b",
    terms: [
      metered,
      sum({
        symbol: "E_b",
        label: "cooling and fan electricity as modelled from below",
        unit: "kWh a year",
        formula: "E_b = sum of the components",
        parts: split,
      }),
    ],
    compute: (kwh, modelled) => (modelled > 0 ? kwh / modelled : 0),
    notes: ["The meter gives the total; the model gives only the shares of components and zones."],
  });
  return tierModel(
    3,
    below.components.map((each) => (IN_THE_METER.includes(each.id) ? scaled(each, factor, plant) : each)),
    input.currency,
  );
}

const meteredElectricity = ({ electricKwh, source }: MeteredSaving): Quantity => ({
  kind: "input",
  id: "metered-saving",
  group: { id: "metered-saving", label: "saving by the building's own meter" },
  symbol: "S",
  label: "electricity a year that the target would save by the meter's change-point model",
  unit: "kWh a year",
  ...electricKwh,
  origin: "measured",
  source,
});

const scaled = (component: ComponentModel, factor: Step, plant: Plant): ComponentModel => {
  const symbol = `M_${NUMBERS[component.id]}`;
  return component.withElectricity(
    (electric) =>
      step({
        symbol,
        label: `${electric.label}, as metered`,
        unit: electric.unit,
        formula: `${symbol} = k * ${electric.symbol}`,
        terms: [factor, electric],
        compute: (share, kwh) => share * kwh,
      }),
    plant,
  );
};
