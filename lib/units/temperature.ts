/** Conversions of a temperature on a scale. A temperature *difference* has its own functions below. */
export const celsiusFromFahrenheit = (tempF: number): number => (tempF - 32) / 1.8;
export const fahrenheitFromCelsius = (tempC: number): number => tempC * 1.8 + 32;
export const celsiusFromKelvin = (tempK: number): number => tempK - 273.15;
export const kelvinFromCelsius = (tempC: number): number => tempC + 273.15;

/** Conversions of a temperature difference (K and °F as steps, never with the 32 of the scale). */
export const kelvinFromFahrenheitDifference = (differenceF: number): number => differenceF / 1.8;
export const fahrenheitDifferenceFromKelvin = (differenceK: number): number => differenceK * 1.8;
