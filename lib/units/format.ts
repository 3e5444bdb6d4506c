import { ft2FromM2 } from "./area";
import { fahrenheitDifferenceFromKelvin, fahrenheitFromCelsius } from "./temperature";

/** A figure ready to print: digits and unit apart, and both in one text with a no-break space between. */
export type FormattedQuantity = { value: string; unit: string; text: string };

export type Digits = { significantDigits: number } | { decimals: number };

const NO_BREAK_SPACE = "\u00a0";
const MINUS_SIGN = "\u2212";
const formats = new Map<string, Intl.NumberFormat>();

/**
 * Digits of a number in English: a decimal point, commas between groups of three, a true minus sign, and no minus
 * before a zero. Throws on a value that is not a finite number.
 */
export function formatNumber(value: number, digits: Digits): string {
  if (!Number.isFinite(value)) throw new RangeError("only a finite number can be printed");
  return numberFormat(digits)
    .formatToParts(value)
    .map((part) => (part.type === "minusSign" ? MINUS_SIGN : part.value))
    .join("");
}

/** Number and unit with a no-break space; a pure number has the unit "". */
export function formatQuantity(value: number, unit: string, digits: Digits): FormattedQuantity {
  const text = formatNumber(value, digits);
  return { value: text, unit, text: unit === "" ? text : `${text}${NO_BREAK_SPACE}${unit}` };
}

export type TemperatureUnit = "C" | "F";
export type AreaUnit = "m2" | "ft2";

/** A temperature on its scale, to a tenth of a degree. */
export function formatTemperature(tempC: number, unit: TemperatureUnit, decimals = 1): FormattedQuantity {
  return unit === "F"
    ? formatQuantity(fahrenheitFromCelsius(tempC), "°F", { decimals })
    : formatQuantity(tempC, "°C", { decimals });
}

/** A step between temperatures: kelvins, or Fahrenheit degrees without the 32 of the scale. */
export function formatTemperatureDifference(
  differenceK: number,
  unit: TemperatureUnit,
  decimals = 1,
): FormattedQuantity {
  return unit === "F"
    ? formatQuantity(fahrenheitDifferenceFromKelvin(differenceK), "°F", { decimals })
    : formatQuantity(differenceK, "K", { decimals });
}

export function formatArea(areaM2: number, unit: AreaUnit): FormattedQuantity {
  const value = unit === "ft2" ? ft2FromM2(areaM2) : areaM2;
  return formatQuantity(value, unit === "ft2" ? "ft²" : "m²", { decimals: Math.abs(value) < 100 ? 1 : 0 });
}

/** Energy with two decimals below 10 kWh, one below 100 and none above. */
export const formatEnergyKwh = (energyKwh: number, digits?: Digits): FormattedQuantity =>
  formatQuantity(energyKwh, "kWh", digits ?? { decimals: decimalsBySize(energyKwh) });

/** Power with two decimals below 10 W, one below 100 and none above. */
export const formatPowerW = (powerW: number, digits?: Digits): FormattedQuantity =>
  formatQuantity(powerW, "W", digits ?? { decimals: decimalsBySize(powerW) });

function decimalsBySize(value: number): number {
  const size = Math.abs(value);
  if (size >= 99.95) return 0;
  if (size === 0) return 0;
  return size >= 9.995 ? 1 : 2;
}

function numberFormat(digits: Digits): Intl.NumberFormat {
  const key = JSON.stringify(digits);
  const known = formats.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat("en", {
    useGrouping: true,
    signDisplay: "negative",
    ...("decimals" in digits
      ? { minimumFractionDigits: digits.decimals, maximumFractionDigits: digits.decimals }
      : { minimumSignificantDigits: digits.significantDigits, maximumSignificantDigits: digits.significantDigits }),
  });
  formats.set(key, made);
  return made;
}
