import { solveCurvature } from "./fit-report-model";
import { logistic } from "./predictor";
import type { ReportModel } from "./report-model";
import { REFERENCE_TEMP_C } from "./vote-prior";

/** A share of people, 0 to 1, with its 90 % interval. */
export type Share = { median: number; low: number; high: number };

const END_90 = 1.6448536269514722;

/** Shares of a building's people who want it warmer and cooler at an air temperature [°C], by its model. */
export function wantedShares(model: ReportModel, airTempC: number): { warmer: Share; cooler: Share } {
  const [warmer, cooler] = ([0, 1] as const).map((side) => shareOf(model, side, airTempC - REFERENCE_TEMP_C));
  return { warmer: warmer as Share, cooler: cooler as Share };
}

/** Median share of people who want it cooler at an air temperature [°C]: the middle of `wantedShares`, quick to evaluate. */
export function coolerShareAt(model: ReportModel): (airTempC: number) => number {
  const weighted = (of: 3 | 4): number =>
    model.fits.reduce((sum, fit) => sum + fit.weight * (fit.shared[of] as number), 0);
  const [level, slope] = [weighted(3), weighted(4)];
  return (airTempC) => logistic(level + slope * (airTempC - REFERENCE_TEMP_C));
}

function shareOf({ fits }: ReportModel, side: 0 | 1, x: number): Share {
  const parts = fits.map(({ shared, own, curvature, weight }) => {
    const gradient = new Float64Array(shared.length);
    gradient[1 + 2 * side] = 1;
    gradient[2 + 2 * side] = x;
    const solved = solveCurvature(curvature, gradient, new Float64Array(own.length));
    const variance = gradient.reduce((sum, v, i) => sum + v * (solved.shared[i] as number), 0);
    return { weight, mean: (shared[1 + 2 * side] as number) + (shared[2 + 2 * side] as number) * x, variance };
  });
  const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
  const variance = parts.reduce((sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2), 0);
  const half = END_90 * Math.sqrt(variance);
  return { median: logistic(mean), low: logistic(mean - half), high: logistic(mean + half) };
}
