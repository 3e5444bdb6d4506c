/** Largest continuous current in A that a breaker may be planned for. */
export const continuousLimitA = (breakerRatingA: number, continuousFactor: number): number =>
  breakerRatingA / continuousFactor;
