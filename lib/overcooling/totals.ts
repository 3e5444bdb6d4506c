import { EMISSION_SCOPES } from "@/lib/assumptions/emissions";
import type { HeatingFuel } from "@/lib/assumptions/system-type";
import { type Step, type Sum, step, sum } from "./calculation/quantity";
import { NUMBERS, type TierModel } from "./component-model";
import type { Plant } from "./plant";

/** Energy and emissions of a tier. Electric reheat counts as electricity. */
export type Totals = { electricKwh: Sum; heatKwh: Sum; emissionsKgCo2: Sum };

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
  const emitted = (symbol: string, energy: Sum, factor: "electricity" | HeatingFuel, factorSymbol: string): Step =>
    step({
      symbol,
      label: `carbon dioxide of ${energy.label}: ${EMISSION_SCOPES[factor]}`,
      unit: "kg a year",
      formula: `${symbol} = ${energy.symbol} * ${factorSymbol}`,
      terms: [energy, plant.assumed.shared(`emission-factor/${factor}`, factorSymbol)],
      compute: (kwh, kgPerKwh) => kwh * kgPerKwh,
    });
  const parts = [
    emitted("G_e", electricKwh, "electricity", "e_e"),
    ...(allElectric ? [] : [emitted("G_q", heatKwh, fuel, "e_q")]),
  ];
  return {
    electricKwh,
    heatKwh,
    emissionsKgCo2: sum({
      symbol: "G",
      label: "carbon dioxide",
      unit: "kg a year",
      formula: "G = sum of the scopes",
      parts: parts.map((quantity) => ({ symbol: quantity.symbol, label: quantity.label, quantity })),
      notes: [
        "Average factors, for an inventory. What a change avoids is reckoned with marginal factors, about twice as high; the two are never mixed. A factor of the building's own is of the year that its reason says.",
      ],
    }),
  };
}
