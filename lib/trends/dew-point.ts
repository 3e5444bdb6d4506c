/**
 * Dew point [°C] of air by the Magnus formula, a = 17.62 and b = 243.12 °C (WMO Guide to Instruments and Methods of
 * Observation, WMO-No. 8, annex 4.B: over water, -45 to 60 °C; constants from memory). Humidity above 0 and up to 100 %.
 */
export function dewPointC(airTempC: number, relativeHumidityPct: number): number {
  const gamma = Math.log(relativeHumidityPct / 100) + (17.62 * airTempC) / (243.12 + airTempC);
  return (243.12 * gamma) / (17.62 - gamma);
}
