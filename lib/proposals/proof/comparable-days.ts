import { effectiveCount, lagOneCorrelation } from "@/lib/statistics/autocorrelation";
import { mean } from "@/lib/statistics/moments";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";

/** A day's value with the mean outdoor air temperature of the day [°C]. */
export type ProofDay = { outdoorC: number; value: number };

const BIN_K = 3;
/** Days that a bin needs on each side: common practice, no source. */
const LEAST_DAYS = 2;

export type WeatherDifference =
  | {
      status: "ok";
      before: number;
      after: number;
      difference: number;
      low: number;
      high: number;
      daysBefore: number;
      daysAfter: number;
      daysLeftOut: number;
    }
  /** Too few days of like weather on both sides. */
  | { status: "not-comparable"; daysBefore: number; daysAfter: number };

/**
 * Difference of means, after less before, over days of like weather: days are compared within outdoor bins of 3 K that
 * both sides have, each bin weighted by its days after. The interval is Student's on the spread within bins, with the
 * number of independent days reduced for their autocorrelation, once (n' = n (1 - rho) / (1 + rho)).
 */
export function weatherDifference(
  before: readonly ProofDay[],
  after: readonly ProofDay[],
  level: number,
): WeatherDifference {
  const [earlier, later] = [byBin(before), byBin(after)];
  const bins = [...later.keys()].filter(
    (bin) => (earlier.get(bin)?.length ?? 0) >= LEAST_DAYS && (later.get(bin)?.length ?? 0) >= LEAST_DAYS,
  );
  const used = (side: Map<number, number[]>): number =>
    bins.reduce((sum, bin) => sum + (side.get(bin)?.length ?? 0), 0);
  const [daysBefore, daysAfter] = [used(earlier), used(later)];
  if (daysBefore < 5 || daysAfter < 5) return { status: "not-comparable", daysBefore, daysAfter };
  let meanBefore = 0;
  let meanAfter = 0;
  let variance = 0;
  const residualsBefore = residuals(before, earlier, bins);
  const residualsAfter = residuals(after, later, bins);
  const inflation = {
    before: daysBefore / effectiveCount(daysBefore, lagOneCorrelation(residualsBefore)),
    after: daysAfter / effectiveCount(daysAfter, lagOneCorrelation(residualsAfter)),
  };
  const df = Math.max(1, daysBefore + daysAfter - 2 * bins.length);
  const spread = (residualsBefore.reduce(squares, 0) + residualsAfter.reduce(squares, 0)) / df;
  for (const bin of bins) {
    const [a, b] = [earlier.get(bin) as number[], later.get(bin) as number[]];
    const weight = b.length / daysAfter;
    meanBefore += weight * mean(a);
    meanAfter += weight * mean(b);
    variance += weight ** 2 * spread * (inflation.before / a.length + inflation.after / b.length);
  }
  const freedom = Math.max(1, daysBefore / inflation.before + daysAfter / inflation.after - 2 * bins.length);
  const half = studentTwoSidedQuantile(level, freedom) * Math.sqrt(variance);
  const difference = meanAfter - meanBefore;
  return {
    status: "ok",
    before: meanBefore,
    after: meanAfter,
    difference,
    low: difference - half,
    high: difference + half,
    daysBefore,
    daysAfter,
    daysLeftOut: before.length + after.length - daysBefore - daysAfter,
  };
}

const squares = (sum: number, each: number): number => sum + each ** 2;
const binOf = ({ outdoorC }: ProofDay): number => Math.floor(outdoorC / BIN_K);

function byBin(days: readonly ProofDay[]): Map<number, number[]> {
  const bins = new Map<number, number[]>();
  for (const day of days) bins.set(binOf(day), [...(bins.get(binOf(day)) ?? []), day.value]);
  return bins;
}

/** What each day lies off the mean of its bin, in the order of the days. */
function residuals(days: readonly ProofDay[], bins: ReadonlyMap<number, number[]>, used: readonly number[]): number[] {
  return days.flatMap((day) => {
    const bin = binOf(day);
    return used.includes(bin) ? [day.value - mean(bins.get(bin) as number[])] : [];
  });
}
