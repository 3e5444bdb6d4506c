import type { Origin, Working } from "@/lib/working/working";
import { summedRange, type ValueRange } from "./value-range";

/** Devices of one sort that are counted together. */
export type CountedClass = { label: string; devices: number; energyKwh: ValueRange };

/**
 * Energy and cost a year of many devices: the sum over their sorts, each the sum over its devices. Ranges are added end to end, as
 * if all erred together: the widest that the total can be.
 */
export function registerWorkings(
  classes: readonly CountedClass[],
  price: { pricePerKwh: number; currency: string; origin: Origin; source?: string; href?: string },
): { energy: Working; cost: Working; energyKwh: ValueRange } {
  const energyKwh = summedRange(classes.map((each) => each.energyKwh));
  const symbols = classes.map((_, index) => `E${subscript(index + 1)}`);
  const energy: Working = {
    formula: `E = ${symbols.join(" + ") || "0"}`,
    terms: classes.map((each, index) => ({
      symbol: symbols[index] ?? "",
      label: `${each.devices} × ${each.label}: sum of their sheets`,
      ...each.energyKwh,
      unit: "kWh/year",
      origin: "computed",
      href: "/devices",
    })),
    result: { symbol: "E", label: "energy a year", value: energyKwh.value, unit: "kWh/year" },
    notes: [
      "Each device's own working stands on its page. Ranges are added end to end, as if all readings erred together.",
    ],
  };
  const { pricePerKwh, currency, ...source } = price;
  return {
    energyKwh,
    energy,
    cost: {
      formula: "K = E × p",
      terms: [
        { symbol: "E", label: "energy a year", ...energyKwh, unit: "kWh/year", origin: "computed", working: energy },
        { symbol: "p", label: "electricity price", value: pricePerKwh, unit: `${currency}/kWh`, ...source },
      ],
      result: {
        symbol: "K",
        label: "cost a year",
        value: energyKwh.value * pricePerKwh,
        unit: `${currency}/year`,
      },
    },
  };
}

const subscript = (number: number): string => [...String(number)].map((digit) => "₀₁₂₃₄₅₆₇₈₉"[Number(digit)]).join("");
