import { binomialAtLeast, binomialAtMost, binomialProbability, shareInterval } from "./binomial";
import { poissonProbability } from "./poisson";

/** Events seen over an exposure (hours, desk-hours, person-days). */
export type Counted = { events: number; exposure: number };

export type RateRatio = {
  /** First rate over the second; null where the second saw no event. */
  ratio: number | null;
  /** Exact interval; null where it has no end above. */
  low: number;
  high: number | null;
  /** Twice the smaller tail, at most 1: what the interval goes with. */
  pCentral: number;
  /** Sum of all outcomes no likelier than the one seen: what some programs print beside the same interval. */
  pMinLikelihood: number;
};

/**
 * Compares two rates by their counts alone. Given all events, those of the first are binomial; its exact interval carries
 * over to the ratio (Przyborowski & Wilenski 1940; Clopper & Pearson 1934).
 */
export function rateRatio(first: Counted, second: Counted, confidence: number): RateRatio {
  const all = first.events + second.events;
  const odds = second.exposure / first.exposure;
  if (all === 0) return { ratio: null, low: 0, high: null, pCentral: 1, pMinLikelihood: 1 };
  const { low, high } = shareInterval(first.events, all, confidence);
  const share = first.exposure / (first.exposure + second.exposure);
  return {
    ratio: second.events === 0 ? null : (first.events / second.events) * odds,
    low: (low / (1 - low)) * odds,
    high: high >= 1 ? null : (high / (1 - high)) * odds,
    pCentral: centralP(first.events, all, share),
    pMinLikelihood: minLikelihoodP(first.events, all, share),
  };
}

function centralP(events: number, all: number, share: number): number {
  return Math.min(1, 2 * Math.min(binomialAtMost(events, all, share), binomialAtLeast(events, all, share)));
}

/** Outcomes whose probability differs by rounding alone count as alike. */
const ALIKE = 1 + 1e-7;

function minLikelihoodP(events: number, all: number, share: number): number {
  const seen = binomialProbability(events, all, share) * ALIKE;
  let sum = 0;
  for (let k = 0; k <= all; k++) {
    const probability = binomialProbability(k, all, share);
    if (probability <= seen) sum += probability;
  }
  return Math.min(1, sum);
}

/**
 * Chance that a change of a rate shows: that the central test finds it below `significance` when `expectedBefore` events
 * are expected before and `ratio` times that, by exposure, after.
 */
export function powerToShow(change: {
  expectedBefore: number;
  ratio: number;
  /** Exposure after over that before. */
  exposureRatio?: number;
  significance?: number;
}): number {
  const { expectedBefore, ratio, exposureRatio = 1, significance = 0.05 } = change;
  const expectedAfter = expectedBefore * ratio * exposureRatio;
  const share = 1 / (1 + exposureRatio);
  let power = 0;
  for (const [before, chance] of likely(expectedBefore))
    for (const [after, other] of likely(expectedAfter))
      if (before + after > 0 && centralP(before, before + after, share) <= significance) power += chance * other;
  return power;
}

/** Counts that may come where so many are expected, with their chances; what is left out is one in ten million. */
function likely(mean: number): [count: number, chance: number][] {
  const spread = 6 * Math.sqrt(mean + 1);
  const from = Math.max(0, Math.floor(mean - spread));
  return Array.from({ length: Math.ceil(mean + spread) - from + 1 }, (_, i) => [
    from + i,
    poissonProbability(from + i, mean),
  ]);
}
