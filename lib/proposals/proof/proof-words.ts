import { fahrenheitDifferenceFromKelvin, fahrenheitFromCelsius } from "@/lib/units/temperature";

/** How the numbers of a proof are written in its sentence: as the building's people read them. */
export type ProofWords = {
  unit: string;
  /** Unit of a difference: kelvins are no degrees Celsius. */
  changeUnit: string;
  value: (value: number) => string;
  change: (difference: number) => string;
};

const three = (value: number): string =>
  Number(value.toPrecision(3)).toLocaleString("en", { maximumFractionDigits: 12 }).replace("-", "\u2212");

/** Three digits in the unit itself. */
export const plainWords = (unit: string): ProofWords => ({ unit, changeUnit: unit, value: three, change: three });

/** Temperatures [°C] and their differences [K] on the building's scale. */
export const temperatureWords = (scale: "C" | "F"): ProofWords =>
  scale === "C"
    ? { ...plainWords("°C"), changeUnit: "K" }
    : {
        unit: "°F",
        changeUnit: "°F",
        value: (tempC) => three(fahrenheitFromCelsius(tempC)),
        change: (differenceK) => three(fahrenheitDifferenceFromKelvin(differenceK)),
      };
