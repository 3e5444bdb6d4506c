import { scaledRange, type ValueRange } from "./value-range";

export type SettingCost =
  | { status: "ok"; cost: ValueRange }
  | { status: "refused"; code: "impossible-price"; message: string };

/** Cost a year in major units of the price's currency: energy in kWh times price per kWh, not rounded. */
export function settingCost(energyKwh: ValueRange, pricePerKwh: number): SettingCost {
  if (!Number.isFinite(pricePerKwh) || pricePerKwh < 0) {
    return {
      status: "refused",
      code: "impossible-price",
      message: `The price per kWh must be 0 or more; ${pricePerKwh} is on record. Correct it in the building's settings.`,
    };
  }
  return { status: "ok", cost: scaledRange(energyKwh, pricePerKwh) };
}
