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

/**
 * Replaces the first `count` of `us` by their quantiles, as `triangularQuantile` but for rounding. On either side of the
 * mode one of the two roots stands still, so both are taken without asking which side it is: random values make the
 * processor guess that wrong every other time. Least and largest are written with the absolute value for the same reason;
 * neither comes out below 0, since rounding keeps order.
 */
export function triangularQuantiles({ low, mode, high }: Triangular, us: Float64Array, count: number): void {
  const width = high - low;
  if (!(width > 0)) {
    us.fill(mode, 0, count);
    return;
  }
  const atMode = (mode - low) / width;
  const [left, right] = [(width * (mode - low)) / 2, (width * (high - mode)) / 2];
  const ends = low - mode + high;
  for (let i = 0; i < count; i++) {
    const u = us[i] as number;
    const apart = Math.abs(u - atMode);
    const below = u + atMode - apart;
    const above = 1 - u + (1 - atMode) - apart;
    us[i] = ends + Math.sqrt(below * left) - Math.sqrt(above * right);
  }
}
