/**
 * How people in air-conditioned offices vote, by air temperature: shares who want it warmer and cooler, as logits
 * a + b (t - 23 °C), summer and winter. Fitted to the preference votes of the ASHRAE Global Thermal Comfort Database
 * II, version 2.1.0 (doi 10.6078/D1F671, CC0), air temperature 20-26 °C.
 */
const LOGIT = {
  summer: { warmer: { a: -1.545, b: -0.411 }, cooler: { a: -1.056, b: 0.309 } },
  winter: { warmer: { a: -1.336, b: -0.493 }, cooler: { a: -1.271, b: 0.366 } },
} as const;
export type VoteSeason = keyof typeof LOGIT;

export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** May to September counts as summer. */
export const voteSeason = (month: number): VoteSeason => (month >= 5 && month <= 9 ? "summer" : "winter");

/** Shares of votes at an air temperature. */
export function preferenceShares(season: VoteSeason, airTempC: number): { warmer: number; cooler: number } {
  const { warmer, cooler } = LOGIT[season];
  return {
    warmer: logistic(warmer.a + warmer.b * (airTempC - 23)),
    cooler: logistic(cooler.a + cooler.b * (airTempC - 23)),
  };
}
