/**
 * Student's t distribution through the regularised incomplete beta function, after its continued fraction
 * (Abramowitz & Stegun 1964, 26.7.1 and 26.5.8; evaluated by Lentz's method). Right to 1e-10 against an independent
 * computation in the tests.
 */

/** Two-sided tail of |t| with `df` degrees of freedom (any number above 0): the p value of a t statistic. */
export function studentTwoSided(t: number, df: number): number {
  if (!(df > 0)) throw new RangeError("Student's t needs more than 0 degrees of freedom");
  return incompleteBeta(df / (df + t * t), df / 2, 0.5);
}

/** The t that |T| stays below with probability `level` in (0, 1), with `df` degrees of freedom. */
export function studentTwoSidedQuantile(level: number, df: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError("a level of confidence lies between 0 and 1");
  const tail = 1 - level;
  let high = 1;
  while (studentTwoSided(high, df) > tail) high *= 2;
  let low = 0;
  // Each step halves the interval: 60 steps leave less than a rounding error.
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (studentTwoSided(middle, df) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2)
    ? (front * continuedFraction(x, a, b)) / a
    : 1 - (front * continuedFraction(1 - x, b, a)) / b;
}

const TINY = 1e-300;
const MOST_TERMS = 10_000;

function continuedFraction(x: number, a: number, b: number): number {
  const away = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let result = d;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    result *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return result;
}

/** Logarithm of the gamma function for z > 0: Stirling's series (Abramowitz & Stegun 6.1.41) after shifting z above 10. */
function lnGamma(z: number): number {
  let shift = 0;
  let at = z;
  while (at < 10) shift += Math.log(at++);
  const square = at * at;
  const series = (1 / 12 - (1 / 360 - (1 / 1260 - 1 / 1680 / square) / square) / square) / at;
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
