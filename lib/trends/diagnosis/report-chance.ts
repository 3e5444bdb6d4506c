/**
 * Chance of at least `successes` in `trials` of a binomial with the given probability in (0, 1), summed exactly. Counts
 * whole, `0 <= successes <= trials`.
 */
export function binomialTail(of: { successes: number; trials: number; probability: number }): number {
  const { successes, trials, probability } = of;
  let logTerm = successes * Math.log(probability) + (trials - successes) * Math.log1p(-probability);
  for (let i = 1; i <= successes; i++) logTerm += Math.log((trials - successes + i) / i);
  let term = Math.exp(logTerm);
  let sum = 0;
  for (let k = successes; k <= trials; k++) {
    sum += term;
    term *= ((trials - k) / (k + 1)) * (probability / (1 - probability));
  }
  return Math.min(1, sum);
}

/**
 * Chance of a count at least as lopsided as `more` against `fewer` when both kinds are equally likely: the exact
 * one-sided sign test. For two Poisson counts over the same time it is the conditional test of equal rates
 * (Przyborowski & Wilenski 1940, Biometrika 31, 313-323). Reports of one person are not independent, which the caller
 * has to see to. No reports give 1.
 */
export const signTestProbability = (more: number, fewer: number): number =>
  binomialTail({ successes: more, trials: more + fewer, probability: 0.5 });

/**
 * Bound on the chance that some desk of `desks` sends at least `busiest` of `reports` when all are as likely to report:
 * the binomial tail of one desk times the number of desks (Bonferroni). A lone desk gives 1.
 */
export const oneDeskProbability = (of: { busiest: number; reports: number; desks: number }): number =>
  of.desks < 2
    ? 1
    : Math.min(1, of.desks * binomialTail({ successes: of.busiest, trials: of.reports, probability: 1 / of.desks }));
