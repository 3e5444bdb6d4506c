import type { Scratch } from "./scratch";
import type { WholeValues } from "./trend-file";

/** Stands in the table for a number that is not stored. */
const NOT_STORED = -(2 ** 31);

/**
 * Whole numbers as they are stored, one stretch after the other, each different one converted once: a year of a zone's air
 * has some hundred. Null where some are not stored, or where they lie so far apart that the table would be longer than the
 * list. `storedAs` is asked for every number between the least and the largest, and says null for one that is not to be
 * stored.
 */
export function convertWhole(
  stretches: readonly WholeValues[],
  storedAs: (value: number) => number | null,
  scratch?: Scratch,
): Int32Array | null {
  const filled = stretches.filter(({ scaled }) => scaled.length > 0);
  const decimals = Math.max(0, ...filled.map((stretch) => stretch.decimals));
  const power = 10 ** decimals;
  const n = filled.reduce((sum, { scaled }) => sum + scaled.length, 0);
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const stretch of filled) {
    const factor = 10 ** (decimals - stretch.decimals);
    lowest = Math.min(lowest, stretch.lowest * factor);
    highest = Math.max(highest, stretch.highest * factor);
  }
  if (highest - lowest >= n) return null;
  const length = n === 0 ? 0 : highest - lowest + 1;
  const table = scratch?.int32("stored by number", length) ?? new Int32Array(length);
  for (let k = 0; k < length; k++) table[k] = storedAs((lowest + k) / power) ?? NOT_STORED;
  const v = scratch?.int32("stored values", n) ?? new Int32Array(n);
  let at = 0;
  for (const stretch of filled) {
    const own = v.subarray(at, at + stretch.scaled.length);
    if (!lookUp(stretch.scaled, 10 ** (decimals - stretch.decimals), { table, lowest }, own)) return null;
    at += own.length;
  }
  return v;
}

/** Puts what stands in the table for each number into `out`; false when one is not stored. */
function lookUp(
  scaled: WholeValues["scaled"],
  factor: number,
  { table, lowest }: { table: Int32Array; lowest: number },
  out: Int32Array,
): boolean {
  for (let i = 0; i < out.length; i++) {
    const stored = table[(scaled[i] as number) * factor - lowest] as number;
    if (stored === NOT_STORED) return false;
    out[i] = stored;
  }
  return true;
}
