import { mean, sampleDeviation } from "@/lib/statistics/moments";
import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";

/**
 * Mean difference of a switchback: weeks with the low and the high setpoint in turn, each pair weather-adjusted, with a
 * confidence interval by the paired t test. Throws unless there are two pairs or more.
 */
export function pairedDifference(
  low: readonly number[],
  high: readonly number[],
  level: number,
): { meanDifference: number; interval: [number, number]; t: number } {
  if (low.length !== high.length || low.length < 2) throw new RangeError("a paired test needs two pairs or more");
  const differences = low.map((each, i) => each - (high[i] as number));
  const meanDifference = mean(differences);
  const error = sampleDeviation(differences) / Math.sqrt(differences.length);
  const half = studentTwoSidedQuantile(level, differences.length - 1) * error;
  return { meanDifference, interval: [meanDifference - half, meanDifference + half], t: meanDifference / error };
}
