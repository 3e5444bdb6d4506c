import { studentTwoSidedQuantile } from "@/lib/statistics/student-t";

/** Factor of the autocorrelation-free form (Reddy & Claridge 2000; ASHRAE Guideline 14-2002). */
export const SAVINGS_FACTOR = 1.26;

/** How autocorrelation enters: by n/n' under the root, by n' in the error's degrees of freedom, or not at all. Never both. */
export type AutocorrelationForm = "none" | "effective-count" | "mean-square";

/** The factor of Sun & Baltazar 2013 in place of 1.26, by months of reporting (CalTRACK 2.0, 4.3.2.4). */
export function reportingFactor(readings: "day" | "bill", months: number): number {
  return readings === "day"
    ? -0.00024 * months ** 2 + 0.03535 * months + 1.00286
    : -0.00022 * months ** 2 + 0.03306 * months + 0.94054;
}

/**
 * Fractional savings uncertainty: half-width of the savings at `level` over the savings,
 *
 *   FSU = k · t · CV(RMSE) / F · sqrt(n / n' · (1 + 2 / n') / m)
 *
 * (Reddy & Claridge 2000; Guideline 14-2002). `mean-square` is the equivalent form of Guideline 14-2014 annex B: the
 * error over n' - p, t with n' - p, and no n / n'. The two corrections are alternatives: both at once count the
 * autocorrelation twice. n baseline readings of which n' are independent, m readings of reporting, F saved share.
 */
export function fractionalSavingsUncertainty(input: {
  cvRmse: number;
  n: number;
  effectiveN: number;
  p: number;
  m: number;
  savedFraction: number;
  level: number;
  form: AutocorrelationForm;
  factor?: number;
}): number {
  const { cvRmse, n, effectiveN, p, m, savedFraction, level, form, factor = SAVINGS_FACTOR } = input;
  const own = form === "none" ? n : effectiveN;
  const df = form === "mean-square" ? effectiveN - p : n - p;
  if (!(df > 0) || !(savedFraction > 0)) throw new RangeError("too few independent readings, or nothing saved");
  const error = form === "mean-square" ? cvRmse * Math.sqrt((n - p) / df) : cvRmse;
  const repeats = form === "effective-count" ? n / own : 1;
  const t = studentTwoSidedQuantile(level, df);
  return ((factor * t * error) / savedFraction) * Math.sqrt((repeats * (1 + 2 / own)) / m);
}

/** Least saved share that the meter can show at this level: where the uncertainty is half of the savings (Guideline 14). */
export const leastDetectableFraction = (input: Parameters<typeof fractionalSavingsUncertainty>[0]): number =>
  (input.savedFraction * fractionalSavingsUncertainty(input)) / 0.5;
