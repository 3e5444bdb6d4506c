import { crossingOf } from "./crossing";
import { logFactorial } from "./log-factorial";
import type { Interval } from "./poisson";

/** Probability of `successes` among `n` where each has the probability `p`. */
export function binomialProbability(successes: number, n: number, p: number): number {
  if (p <= 0) return successes === 0 ? 1 : 0;
  if (p >= 1) return successes === n ? 1 : 0;
  const ways = logFactorial(n) - logFactorial(successes) - logFactorial(n - successes);
  return Math.exp(ways + successes * Math.log(p) + (n - successes) * Math.log1p(-p));
}

/** Probability of at most, or of at least, so many successes. */
export const binomialAtMost = (successes: number, n: number, p: number): number => sumOf(0, successes, n, p);
export const binomialAtLeast = (successes: number, n: number, p: number): number => sumOf(successes, n, n, p);

function sumOf(from: number, to: number, n: number, p: number): number {
  let sum = 0;
  for (let k = from; k <= to; k++) sum += binomialProbability(k, n, p);
  return Math.min(1, sum);
}

/** Exact interval for a share of which `successes` among `n` were seen (Clopper & Pearson 1934). */
export function shareInterval(successes: number, n: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  return {
    low: successes === 0 ? 0 : crossingOf((p) => binomialAtLeast(successes, n, p), tail, 0, 1),
    high: successes === n ? 1 : crossingOf((p) => -binomialAtMost(successes, n, p), -tail, 0, 1),
  };
}
