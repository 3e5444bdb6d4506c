import type { VotePrior } from "./vote-prior";

/** Desk-hours of one zone in one bin of zone air temperature in one season, and the person-days that reported in it. */
export type ExposureBin = { airTempC: number; deskHours: number; tooCold: number; tooWarm: number };

export type ZoneExposureBins = { zone: string; floor: string; bins: readonly ExposureBin[] };

/**
 * A fitted model: log of the reports per desk-hour that it is too cold = rate + log(share wanting it warmer) + floor + zone,
 * and the same for too warm. Shares are logits of temperature that begin as the field votes have them; floor and zone effects
 * are drawn to nought with the deviation `zoneDeviation` (half of it for floors).
 */
export type ReportModel = {
  zones: readonly string[];
  floors: readonly string[];
  floorOfZone: readonly number[];
  prior: VotePrior;
  /** One for each deviation of zones that was tried, with its weight. */
  fits: readonly WeightedFit[];
};

export type WeightedFit = {
  zoneDeviation: number;
  weight: number;
  /** rate, a and b of warmer, a and b of cooler, then (too cold, too warm) of each floor. */
  shared: Float64Array;
  /** (too cold, too warm) of each zone. */
  own: Float64Array;
  curvature: Curvature;
};

/** Curvature of the negative log posterior at its optimum, arranged so that zones are eliminated first. */
export type Curvature = {
  /** Cholesky factor of what is left for the shared parameters when the zones' are eliminated. */
  schur: readonly Float64Array[];
  /** Row by row of `own`: its curvature with the shared parameters, and its own. */
  cross: readonly Float64Array[];
  own: Float64Array;
};

export const SHARED_FIXED = 5;
export const ZONE_DEVIATIONS = [0.1, 0.2, 0.4, 0.7, 1.1] as const;
