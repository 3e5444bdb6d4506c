import { SHARED_FIXED } from "./report-model";
import { REFERENCE_TEMP_C } from "./vote-prior";

/** The two sides in the order in which parameters stand. */
export const SIDES = ["tooCold", "tooWarm"] as const;

export const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** Where a zone's parameters stand. */
export type Place = { zone: number; floor: number };

/** Reports per desk-hour of one side at an air temperature, with its derivatives by a, and by b per kelvin from 23 °C. */
export function rateAt(
  { shared, own }: { shared: Float64Array; own: Float64Array },
  side: 0 | 1,
  { zone, floor }: Place,
  airTempC: number,
): { rate: number; notShare: number; x: number } {
  const x = airTempC - REFERENCE_TEMP_C;
  const logit = (shared[1 + 2 * side] as number) + (shared[2 + 2 * side] as number) * x;
  const share = logistic(logit);
  const effects = (shared[SHARED_FIXED + 2 * floor + side] as number) + (own[2 * zone + side] as number);
  return { rate: Math.exp((shared[0] as number) + effects) * share, notShare: 1 - share, x };
}

/** Adds `by` times the derivatives of a log rate to the shared parameters' part of a gradient. */
export function addGradient(
  to: Float64Array,
  side: 0 | 1,
  floor: number,
  { notShare, x }: { notShare: number; x: number },
  by: number,
): void {
  to[0] = (to[0] as number) + by;
  to[1 + 2 * side] = (to[1 + 2 * side] as number) + by * notShare;
  to[2 + 2 * side] = (to[2 + 2 * side] as number) + by * notShare * x;
  const at = SHARED_FIXED + 2 * floor + side;
  to[at] = (to[at] as number) + by;
}
