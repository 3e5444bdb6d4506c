/** A total with its inputs' swings, enough to say what another value of one input would make of it. */
export type Sensitivity = {
  /** Total with every input at its stated value. */
  stated: number;
  /** Square root of the sum over all inputs but this one of ((high - low) / √24)² of their totals. */
  othersDeviation: number;
  value: number;
  low: number;
  high: number;
  lowTotal: number;
  highTotal: number;
};

export type LiveEffect = { stated: number; low: number; high: number };

/** Two-sided 80 % quantile of the normal distribution. */
const Z_80 = 1.2816;

/**
 * What a total becomes when one input gets another value and range, without evaluating it anew: straight lines through
 * its totals at low, value and high, carried on beyond the ends, and a range by root of sum of squares,
 * u² = Σ((high - low) / √24)², ± 1.28 u for 80 % (reference J). Near enough to type by; the exact effect is worked out
 * on asking. Null when the typed values are no range.
 */
export function liveEffect(of: Sensitivity, typed: { value: number; low: number; high: number }): LiveEffect | null {
  if (!(typed.low <= typed.value && typed.value <= typed.high) || !(of.low < of.high)) return null;
  const totalAt = (x: number): number => {
    const below = x < of.value || of.value === of.high;
    const [end, endTotal] = below && of.value > of.low ? [of.low, of.lowTotal] : [of.high, of.highTotal];
    return of.stated + ((x - of.value) * (endTotal - of.stated)) / (end - of.value);
  };
  const own = (totalAt(typed.high) - totalAt(typed.low)) / Math.sqrt(24);
  const half = Z_80 * Math.hypot(of.othersDeviation, own);
  const stated = totalAt(typed.value);
  return { stated, low: stated - half, high: stated + half };
}
