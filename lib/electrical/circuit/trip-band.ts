import type { RuleSet } from "./rule-sets";

/** What a breaker does at a steady load, worst last. Open air at 25 °C (from memory): a warm crowded panel trips sooner. */
export const TRIP_BANDS = [
  "no-trip-expected",
  "holds-at-least-1h",
  "may-hold",
  "trips-within-1h",
  "trips-within-2min",
] as const;
export type TripBand = (typeof TRIP_BANDS)[number];

/**
 * Band of a load of `ratingMultiple` times the breaker's rating. UL 489, calibration: holds 100 %, trips at 135 % within an
 * hour (to 50 A) and at 200 % within two minutes (to 30 A). IEC 60898-1:2002: conventional non-tripping current 1.13, tripping
 * current 1.45 times the rating, conventional time an hour to 63 A (from memory). Larger breakers have longer times; there the
 * band says no more than that it may hold.
 */
export function tripBand(load: {
  breakerStandard: RuleSet["breakerStandard"];
  ratingMultiple: number;
  breakerRatingA: number;
}): TripBand {
  const m = load.ratingMultiple;
  if (m <= 1) return "no-trip-expected";
  if (load.breakerStandard === "IEC 60898-1") {
    if (m <= 1.13) return "holds-at-least-1h";
    return m < 1.45 || load.breakerRatingA > 63 ? "may-hold" : "trips-within-1h";
  }
  if (m < 1.35 || load.breakerRatingA > 50) return "may-hold";
  return m < 2 || load.breakerRatingA > 30 ? "trips-within-1h" : "trips-within-2min";
}
