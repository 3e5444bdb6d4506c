import type { Scratch } from "./scratch";
import type { WholeValues } from "./trend-file";

/** Stands in the table for a number that is not stored. */
const NOT_STORED = -(2 ** 31);

/**
 * Whole numbers as they are stored, each different one converted once: a year of a zone's air has some hundred. Null where
 * some are not stored, or where they lie so far apart that the table would be longer than the list. `storedAs` is asked for
 * every number between the least and the largest, and says null for one that is not to be stored.
 */
export function convertWhole(
  { scaled, decimals }: WholeValues,
  storedAs: (value: number) => number | null,
  scratch?: Scratch,
): Int32Array | null {
  const n = scaled.length;
  let lowest = 0;
  let highest = 0;
  for (let i = 0; i < n; i++) {
    const number = scaled[i] as number;
    if (i === 0 || number < lowest) lowest = number;
    if (i === 0 || number > highest) highest = number;
  }
  const length = highest - lowest + 1;
  if (length > n) return null;
  const table = scratch?.int32("stored by number", length) ?? new Int32Array(length);
  const power = 10 ** decimals;
  for (let k = 0; k < length; k++) table[k] = storedAs((lowest + k) / power) ?? NOT_STORED;
  const v = scratch?.int32("stored values", n) ?? new Int32Array(n);
  for (let i = 0; i < n; i++) {
    const stored = table[(scaled[i] as number) - lowest] as number;
    if (stored === NOT_STORED) return null;
    v[i] = stored;
  }
  return v;
}
