export type FuseBand = "within-rating" | "carries-at-least-30-min" | "may-open" | "opens-within-30-min";

/** What a BS 1362 plug fuse does: carries 1.6 times its rating for 30 minutes, opens within 30 minutes at 1.9 times (second hand). */
export function plugFuse(load: { fuseRatingA: number; loadA: number }): { ratingMultiple: number; fuseBand: FuseBand } {
  const ratingMultiple = load.loadA / load.fuseRatingA;
  if (ratingMultiple <= 1) return { ratingMultiple, fuseBand: "within-rating" };
  if (ratingMultiple <= 1.6) return { ratingMultiple, fuseBand: "carries-at-least-30-min" };
  return { ratingMultiple, fuseBand: ratingMultiple < 1.9 ? "may-open" : "opens-within-30-min" };
}

/** Largest listed portable heater on a plug: 1500 W on 15 A, 2000 W on 20 A at 120 V; the same current at other voltages (second hand). */
export function largestPortableHeater(plug: { plugRatingA: number; voltageV: number }): {
  largestHeaterW: number;
  currentA: number;
} {
  const currentA = (plug.plugRatingA * 1500) / (120 * 15);
  return { largestHeaterW: currentA * plug.voltageV, currentA };
}
