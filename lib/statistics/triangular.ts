/** A triangular distribution: lowest, most likely and highest value, `low <= mode <= high`. */
export type Triangular = { low: number; mode: number; high: number };

/** Inverse of the distribution function at `u` in [0, 1]. A zero width gives the mode. */
export function triangularQuantile({ low, mode, high }: Triangular, u: number): number {
  const width = high - low;
  if (!(width > 0)) return mode;
  const atMode = (mode - low) / width;
  return u < atMode ? low + Math.sqrt(u * width * (mode - low)) : high - Math.sqrt((1 - u) * width * (high - mode));
}

/** Mean of the triangular distribution. */
export const triangularMean = ({ low, mode, high }: Triangular): number => (low + mode + high) / 3;

/** Standard deviation of the triangular distribution. */
export function triangularDeviation({ low, mode, high }: Triangular): number {
  const sum = low * low + mode * mode + high * high - low * mode - low * high - mode * high;
  return Math.sqrt(Math.max(0, sum) / 18);
}
