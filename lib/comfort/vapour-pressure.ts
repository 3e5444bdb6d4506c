/** Saturation pressure of water vapour [Pa] at an air temperature [°C], in the form that ISO 7730 and ASHRAE 55 use (Antoine). */
export const saturationPressurePa = (airTempC: number): number =>
  1000 * Math.exp(16.6536 - 4030.183 / (airTempC + 235));

/** Partial pressure of water vapour [Pa]. */
export const vapourPressurePa = (airTempC: number, relHumidityPct: number): number =>
  (relHumidityPct / 100) * saturationPressurePa(airTempC);
