/** Lag-1 autocorrelation of a series: Pearson's correlation of each value with the next. 0 where nothing varies. */
export function lagOneCorrelation(values: ArrayLike<number>): number {
  const pairs = values.length - 1;
  if (pairs < 2) return 0;
  let sumA = 0;
  let sumB = 0;
  for (let i = 0; i < pairs; i++) {
    sumA += values[i] as number;
    sumB += values[i + 1] as number;
  }
  const [meanA, meanB] = [sumA / pairs, sumB / pairs];
  let aa = 0;
  let bb = 0;
  let ab = 0;
  for (let i = 0; i < pairs; i++) {
    const a = (values[i] as number) - meanA;
    const b = (values[i + 1] as number) - meanB;
    aa += a * a;
    bb += b * b;
    ab += a * b;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/**
 * Number of independent values that `n` autocorrelated ones are worth: n' = n (1 - rho) / (1 + rho) (Reddy & Claridge
 * 2000; ASHRAE Guideline 14-2002). A rho of 0 or less takes nothing away.
 */
export const effectiveCount = (n: number, rho: number): number => (rho > 0 ? (n * (1 - rho)) / (1 + rho) : n);
