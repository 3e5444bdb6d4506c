import type { OutdoorHours } from "./outdoor-hours";

/**
 * Saving fraction of a setpoint raised by `riseK`, compounding a fraction a kelvin: 1 - (1 - x)^dT (reference C-iii).
 * 0 for a rise of 0 or less.
 */
export const compoundedSavingFraction = (change: { fractionPerK: number; riseK: number }): number =>
  1 - (1 - change.fractionPerK) ** Math.max(0, change.riseK);

/**
 * First-order share of the season's degree-hours that one kelvin of setpoint is worth: N(T_o > T_bal) / CDH(T_bal)
 * (reference Q3). The steady balance allows no more than this: a bound for percentages read elsewhere. Null where
 * the year has no degree-hours above the base.
 */
export function degreeHourFractionPerK(hours: OutdoorHours, baseC: number): number | null {
  const degreeHours = hours.degreeHours(baseC);
  return degreeHours > 0 ? hours.hoursAtOrAbove(baseC) / degreeHours : null;
}
