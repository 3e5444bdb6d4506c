import type { HeatingFuel } from "@/lib/assumptions/system-type";
import { exact, type Step, type Sum, step, sum } from "./calculation/quantity";
import { NUMBERS, type TierModel } from "./component-model";
import type { Plant } from "./plant";

/** Energy and emissions of a tier. Electric reheat counts as electricity. */
export type Totals = { electricKwh: Sum; heatKwh: Sum; emissionsKgCo2: Step };

export function totalsOf(model: TierModel, plant: Plant, fuel: HeatingFuel): Totals {
  const over = (key: "electric" | "heat", symbol: string) =>
    model.components.flatMap((each) => {
      const quantity = each[key];
      return quantity ? [{ symbol: `${symbol}_${NUMBERS[each.id]}`, label: quantity.label, quantity }] : [];
    });
  const electric = over("electric", "E");
  const heat = over("heat", "Q");
  const total = (symbol: string, label: string, parts: typeof electric): Sum =>
    sum({ symbol, label, unit: "kWh a year", formula: `${symbol} = sum of the components`, parts });
  const allElectric = fuel === "electricity";
  const electricKwh = total("E", "electricity", allElectric ? [...electric, ...heat] : electric);
  const heatKwh = total("Q", "bought heat", allElectric ? [] : heat);
  const heatFactor = allElectric
    ? exact({ symbol: "e_q", label: "no other heat", unit: "kg/kWh", value: 0, origin: "computed" })
    : plant.assumed.shared(`emission-factor/${fuel}`, "e_q");
  return {
    electricKwh,
    heatKwh,
    emissionsKgCo2: step({
      symbol: "G",
      label: "carbon dioxide",
      unit: "kg a year",
      formula: "G = E * e_e + Q * e_q",
      terms: [electricKwh, plant.assumed.shared("emission-factor/electricity", "e_e"), heatKwh, heatFactor],
      compute: (e, electricFactor, q, factor) => e * electricFactor + q * factor,
    }),
  };
}
