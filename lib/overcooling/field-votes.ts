/** Shares of occupants who would want it warmer and cooler, 0 to 1. */
export type WantedChange = { warmer: number; cooler: number };

export const FIELD_VOTES_SOURCE =
  "ASHRAE Global Thermal Comfort Database II v2.1.0, air-conditioned offices in summer, 10,285 votes of preference from 20 to 26 °C, own count; a logit straight in air temperature";

/**
 * Shares of people in air-conditioned offices in summer who would want it warmer or cooler at an air temperature [°C],
 * by logits a + b·(t - 23) fitted to field votes (ASHRAE Global Thermal Comfort Database II): warmer -1.545 - 0.411,
 * cooler -1.056 + 0.309. Cross-sectional: people dress for the building they have. Outside 21 to 26 °C the votes are
 * too few to say.
 */
export const wantedChange = (airTempC: number): WantedChange => ({
  warmer: logistic(-1.545 - 0.411 * (airTempC - 23)),
  cooler: logistic(-1.056 + 0.309 * (airTempC - 23)),
});

const logistic = (logit: number): number => 1 / (1 + Math.exp(-logit));
