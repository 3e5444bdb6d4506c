import { crossingOf } from "./crossing";
import { logFactorial } from "./log-factorial";

export type Interval = { low: number; high: number };

/** Probability of `count` events where `mean` are expected. */
export const poissonProbability = (count: number, mean: number): number =>
  mean === 0 ? (count === 0 ? 1 : 0) : Math.exp(count * Math.log(mean) - mean - logFactorial(count));

/** Probability of at most `count` events. */
export function poissonAtMost(count: number, mean: number): number {
  let sum = 0;
  for (let k = 0; k <= count; k++) sum += poissonProbability(k, mean);
  return Math.min(1, sum);
}

/**
 * Exact interval for the expected number of events of which `count` were seen (Garwood 1936): each end is the mean at
 * which so many or so few would be seen in half of the remaining share of cases.
 */
export function poissonInterval(count: number, confidence: number): Interval {
  const tail = (1 - confidence) / 2;
  const most = count + 20 + 10 * Math.sqrt(count + 1);
  return {
    low: count === 0 ? 0 : crossingOf((mean) => 1 - poissonAtMost(count - 1, mean), tail, 0, most),
    high: crossingOf((mean) => 1 - poissonAtMost(count, mean), 1 - tail, 0, most),
  };
}
