/** When within a year its cash flows fall: at its end, in its middle or at its beginning. */
export type Timing = "end" | "middle" | "beginning";
const YEARS_BACK: Record<Timing, number> = { end: 0, middle: 0.5, beginning: 1 };

/**
 * Present value of 1 paid in year `year`, (1 + d)^-t, with t the year, half a year less in its middle and a year less
 * at its beginning (NIST Handbook 135; EnergyPlus Engineering Reference, ComputePresentValue). `rate` as a fraction;
 * real with constant prices, nominal with prices of the day, never mixed.
 */
export const singlePresentValue = (rate: number, year: number, timing: Timing = "end"): number =>
  (1 + rate) ** -(year - YEARS_BACK[timing]);

/** Present value of 1 paid in each of `years` years (NIST Handbook 135: UPV). */
export function uniformPresentValue(rate: number, years: number, timing: Timing = "end"): number {
  const atEnd = rate === 0 ? years : (1 - (1 + rate) ** -years) / rate;
  return atEnd * (1 + rate) ** YEARS_BACK[timing];
}

/** Present value of payments that begin at 1 · (1 + e) and rise by `escalation` each year (NIST Handbook 135: UPV*). */
export function escalatedPresentValue(rate: number, escalation: number, years: number): number {
  let sum = 0;
  for (let year = 1; year <= years; year++) sum += ((1 + escalation) / (1 + rate)) ** year;
  return sum;
}

/** Nominal discount rate of a real one: (1 + d)(1 + i) - 1. */
export const nominalRate = (realRate: number, inflation: number): number => (1 + realRate) * (1 + inflation) - 1;
