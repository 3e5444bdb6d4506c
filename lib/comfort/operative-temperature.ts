/**
 * Operative temperature [°C]: what air and surfaces make together. Weights of ASHRAE 55 by air speed: 0.5 of the air
 * below 0.2 m/s, 0.6 below 0.6, 0.7 beyond.
 */
export function operativeTempC({
  airTempC,
  radiantTempC,
  airSpeedMps,
}: {
  airTempC: number;
  radiantTempC: number;
  airSpeedMps: number;
}): number {
  const airShare = airSpeedMps < 0.2 ? 0.5 : airSpeedMps < 0.6 ? 0.6 : 0.7;
  return airShare * airTempC + (1 - airShare) * radiantTempC;
}
