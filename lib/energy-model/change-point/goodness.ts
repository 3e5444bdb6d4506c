import { effectiveCount, lagOneCorrelation } from "@/lib/statistics/autocorrelation";

/** How well a model follows its readings. Shares are fractions, not percent. */
export type Goodness = {
  n: number;
  /** Parameters that the degrees of freedom are less by. */
  p: number;
  meanKwh: number;
  sse: number;
  /** sqrt(SSE / (n - p)) [kWh]. */
  rmseKwh: number;
  cvRmse: number;
  /** Net bias, measured less modelled. Least squares has none by construction: it tests the code, not the building. */
  nmbe: number;
  r2: number;
  adjustedR2: number;
  /** Lag-1 autocorrelation of the residuals in the order of time. */
  rho: number;
  /** Independent readings that the n are worth (see `effectiveCount`). */
  effectiveN: number;
};

/**
 * CV(RMSE) = sqrt(SSE / (n - p)) / mean and NMBE = sum(y - ŷ) / ((n - p) · mean), as ASHRAE Guideline 14 defines them
 * (p = 1 for a calibrated model, the number of parameters for a regression). Throws unless n > p and the mean is not 0.
 */
export function goodnessOf(measured: ArrayLike<number>, modelled: ArrayLike<number>, p: number): Goodness {
  const n = measured.length;
  if (modelled.length !== n) throw new RangeError("each measured energy needs its modelled one");
  if (n <= p) throw new RangeError(`${n} readings cannot judge a model of ${p} parameters`);
  let sum = 0;
  for (let i = 0; i < n; i++) sum += measured[i] as number;
  const meanKwh = sum / n;
  if (meanKwh === 0) throw new RangeError("errors relative to a mean of 0 say nothing");
  const residuals = new Float64Array(n);
  let sse = 0;
  let bias = 0;
  let total = 0;
  for (let i = 0; i < n; i++) {
    const y = measured[i] as number;
    const residual = y - (modelled[i] as number);
    residuals[i] = residual;
    sse += residual * residual;
    bias += residual;
    total += (y - meanKwh) ** 2;
  }
  const rmseKwh = Math.sqrt(sse / (n - p));
  const rho = lagOneCorrelation(residuals);
  return {
    n,
    p,
    meanKwh,
    sse,
    rmseKwh,
    cvRmse: rmseKwh / meanKwh,
    nmbe: bias / ((n - p) * meanKwh),
    r2: total > 0 ? 1 - sse / total : 0,
    adjustedR2: total > 0 ? 1 - sse / (n - p) / (total / (n - 1)) : 0,
    rho,
    effectiveN: effectiveCount(n, rho),
  };
}
