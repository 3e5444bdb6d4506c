import type { TemperatureUnit } from "@/lib/units/format";
import { fahrenheitDifferenceFromKelvin, fahrenheitFromCelsius } from "@/lib/units/temperature";

/** A temperature in the unit that a picture is drawn in. */
export const shownTemperature = (tempC: number, unit: TemperatureUnit): number =>
  unit === "F" ? fahrenheitFromCelsius(tempC) : tempC;

/** A temperature difference in the unit that a picture is drawn in. */
export const shownDifference = (differenceK: number, unit: TemperatureUnit): number =>
  unit === "F" ? fahrenheitDifferenceFromKelvin(differenceK) : differenceK;

export const temperatureSign = (unit: TemperatureUnit): string => (unit === "F" ? "°F" : "°C");

export const differenceSign = (unit: TemperatureUnit): string => (unit === "F" ? "°F" : "K");
