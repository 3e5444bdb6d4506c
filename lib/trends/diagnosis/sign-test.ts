/**
 * Chance of a count at least as lopsided as `more` against `fewer` when both kinds are equally likely: the exact
 * one-sided sign test, P(X >= more) of a binomial of more + fewer trials at 1/2. For two Poisson counts over the same time
 * it is the conditional test of equal rates (Przyborowski & Wilenski 1940, Biometrika 31, 313-323). Both counts
 * whole and not negative; reports of one person are not independent, which the caller has to see to. No reports give 1.
 */
export function signTestProbability(more: number, fewer: number): number {
  const trials = more + fewer;
  let logTerm = -trials * Math.LN2;
  for (let i = 1; i <= fewer; i++) logTerm += Math.log((trials - fewer + i) / i);
  let term = Math.exp(logTerm);
  let sum = 0;
  for (let k = more; k <= trials; k++) {
    sum += term;
    term *= (trials - k) / (k + 1);
  }
  return Math.min(1, sum);
}
