/** Mean, standard deviation, and standard deviation of the rate of change [K/h] of something that wanders. */
export type Wandering = { meanC: number; deviationK: number; rateDeviationKPerHour: number };

/**
 * How often an hour a zone's temperature crosses the level at which somebody complains, both wandering independently
 * and normally: Rice's formula for crossings of zero by their difference, as Federspiel (2000) used it for complaints.
 * Its published levels could not be obtained, and it extrapolates a tail: it shows that mean, spread and swing all matter,
 * and in which direction, and never gives a count to expect.
 */
export function crossingsPerHour(zone: Wandering, level: Wandering): number {
  const variance = zone.deviationK ** 2 + level.deviationK ** 2;
  const rateVariance = zone.rateDeviationKPerHour ** 2 + level.rateDeviationKPerHour ** 2;
  const distance = level.meanC - zone.meanC;
  return (Math.sqrt(rateVariance / variance) / (2 * Math.PI)) * Math.exp(-(distance ** 2) / (2 * variance));
}

/** Standard deviation of the rate of change [K/h] that rounding alone shows: of the difference of two rounded readings. */
export const roundingRateDeviation = (stepK: number, intervalHours: number): number =>
  stepK / Math.sqrt(6) / intervalHours;
