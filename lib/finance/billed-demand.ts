/** A year's monthly peaks and the ratchet under which they are billed. */
export type DemandYear = {
  /** Twelve monthly peaks [kW]. */
  peaksKw: readonly number[];
  /** Billed demand is at least this share of the year's highest peak; 0 without a ratchet. */
  ratchetFraction: number;
  /** Places (0-11) of the months whose peak is a cooling peak. */
  coolingMonths: readonly number[];
};

/** Sum of the billed kW of twelve months: each month's peak, or the ratchet's share of the highest (reference T3). */
export function billedKwMonths(peaksKw: readonly number[], ratchetFraction: number): number {
  const highest = Math.max(0, ...peaksKw);
  return peaksKw.reduce((sum, each) => sum + Math.max(each, ratchetFraction * highest), 0);
}

/**
 * Billed kW-months that go when the cooling peaks fall by `reductionKw`. A ratchet makes a lower summer peak count in
 * winter months as well, and makes a lower peak count for nothing while another month's holds the highest up.
 */
export function savedKwMonths({ peaksKw, ratchetFraction, coolingMonths }: DemandYear, reductionKw: number): number {
  const lower = peaksKw.map((each, k) => (coolingMonths.includes(k) ? Math.max(0, each - reductionKw) : each));
  return billedKwMonths(peaksKw, ratchetFraction) - billedKwMonths(lower, ratchetFraction);
}

/** The months of the highest peaks among those with cooling-season hours: as many as the building says. */
export const coolingPeakMonths = (
  peaksKw: readonly number[],
  seasonHours: readonly number[],
  count: number,
): number[] =>
  peaksKw
    .map((kw, month) => ({ kw, month }))
    .filter(({ month }) => (seasonHours[month] ?? 0) > 0)
    .sort((a, b) => b.kw - a.kw)
    .slice(0, count)
    .map(({ month }) => month)
    .sort((a, b) => a - b);
