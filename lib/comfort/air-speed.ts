/** Speed of the air relative to a person [m/s], whose own movement adds to it above 1 met (ASHRAE 55, ISO 7730 Annex C). */
export const relativeAirSpeed = (airSpeedMps: number, metabolicRateMet: number): number =>
  airSpeedMps + 0.3 * Math.max(0, metabolicRateMet - 1);

/** From 23 to 25.5 °C the limit rises along a fitted line, which meets 0.8 m/s a little before its end. */
const STILL = { operativeTempC: 23, limitMps: 0.2 };
const WARM = { operativeTempC: 25.5, limitMps: 0.8 };

/**
 * Highest average air speed [m/s] at people who sit lightly dressed (below 1.3 met and 0.7 clo) and cannot change it;
 * null where they can, for then there is none. ASHRAE 55 (2017 and later), as public implementations have it.
 */
export function airSpeedLimit(operativeTempC: number, occupantsControl: boolean): number | null {
  if (occupantsControl) return null;
  if (operativeTempC <= STILL.operativeTempC) return STILL.limitMps;
  if (operativeTempC >= WARM.operativeTempC) return WARM.limitMps;
  return Math.min(WARM.limitMps, 50.49 - 4.4047 * operativeTempC + 0.096425 * operativeTempC ** 2);
}
