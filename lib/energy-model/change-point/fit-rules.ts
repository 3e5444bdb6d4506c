/** What the readings of a model stand for. */
export type ReadingLength = "hour" | "day" | "bill";

/** Days that one reading stands for. */
export const DAYS_EACH: Record<ReadingLength, number> = { hour: 1 / 24, day: 1, bill: 365 / 12 };

/**
 * A baseline is a complete year of 365 days of which at most 37 are missing (CalTRACK 2.0, 2.2), or twelve bills
 * (ASHRAE Guideline 14, from memory).
 */
export const LEAST_DAYS = 365 - 37;
export const LEAST_BILLS = 12;

/** A slope needs 10 days and 20 °F·d (11.1 K·d) of degree-days that are not zero (CalTRACK 2.0, 3.2 and 3.4). */
export const LEAST_SLOPE_DAYS = 10;
export const LEAST_SLOPE_DEGREE_DAYS = 20 / 1.8;

/** Chance that a slope of nothing but luck is let pass, two-sided: 10 % (CalTRACK 1.0, from memory). */
export const MOST_SLOPE_CHANCE = 0.1;

/** Warmest less coldest reading [K] below which there is no model against temperature. Judgement, no source. */
export const LEAST_TEMP_SPAN_K = 10;

/**
 * Most CV(RMSE) of a whole-building regression: 20 % for energy (ASHRAE Guideline 14, from memory); hourly models are
 * given 30 %, the limit of an hourly calibrated model.
 */
export const MOST_CV_RMSE: Record<ReadingLength, number> = { hour: 0.3, day: 0.2, bill: 0.2 };

/** Above the median by more interquartile ranges than this a reading is named as unusual (CalTRACK 2.0, 2.3.6). */
export const UNUSUAL_RANGES = 3;

/** Outdoor temperatures beyond the fitted ones by more than this share of their span (CalTRACK 2.0, 3.7.5.2). */
export const MOST_EXTRAPOLATION = 0.1;
