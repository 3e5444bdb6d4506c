import { QUARTERS } from "./daily-profile";

/** Quarters of an hour up to which a shift is looked for: two hours either way. */
const MOST_LAG = 8;
/** A profile whose spread is less than this part of its squares is flat: what is left is rounding. */
const FLAT = 1e-9;

/** How far one daily profile must be moved to lie on another, and how alike they are there and where they stand. */
export type ProfileLag = { minutes: number; correlation: number; correlationUnmoved: number };

/**
 * The shift, up to two hours, at which the second of two daily profiles is most like the first: positive when the second runs later.
 * Correlation is Pearson's over the quarters of the day, around midnight, that both know. Null when either is flat or
 * known for less than three quarters of the day.
 */
export function profileLag(first: Float64Array, second: Float64Array): ProfileLag | null {
  const unmoved = correlation(first, second, 0);
  if (unmoved === null) return null;
  let best = { lag: 0, r: unmoved };
  for (let size = 1; size <= MOST_LAG; size++) {
    for (const lag of [size, -size]) {
      const r = correlation(first, second, lag);
      if (r !== null && r > best.r) best = { lag, r };
    }
  }
  return { minutes: best.lag * 15, correlation: best.r, correlationUnmoved: unmoved };
}

function correlation(first: Float64Array, second: Float64Array, lag: number): number | null {
  let n = 0;
  let a = 0;
  let b = 0;
  let aa = 0;
  let bb = 0;
  let ab = 0;
  for (let k = 0; k < QUARTERS; k++) {
    const x = first[k] as number;
    const y = second[(k + lag + QUARTERS) % QUARTERS] as number;
    if (Number.isNaN(x + y)) continue;
    n++;
    a += x;
    b += y;
    aa += x * x;
    bb += y * y;
    ab += x * y;
  }
  const spreadA = aa - (a * a) / n;
  const spreadB = bb - (b * b) / n;
  if (n < 0.75 * QUARTERS || !(spreadA > FLAT * aa) || !(spreadB > FLAT * bb)) return null;
  return (ab - (a * b) / n) / Math.sqrt(spreadA * spreadB);
}

/** Likeness from which two profiles can be held against each other. Judgement, no source. */
const LEAST_CORRELATION = 0.9;
/** How much more alike they must be once moved. Judgement, no source. */
const LEAST_GAIN = 0.05;

/** Whether a shift is more than the wandering of a profile: of at least `leastMinutes`, and clearly better than none. */
export const isShifted = (lag: ProfileLag, leastMinutes: number): boolean =>
  Math.abs(lag.minutes) >= leastMinutes &&
  lag.correlation >= LEAST_CORRELATION &&
  lag.correlation - lag.correlationUnmoved >= LEAST_GAIN;
