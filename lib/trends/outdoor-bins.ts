/** Width of an outdoor air temperature bin [K]; edges stand at multiples of it (reference Q8). */
export const BIN_WIDTH_K = 3;

/** Lower edge [°C] of the bin that an outdoor air temperature falls in. */
export const binLowC = (outdoorAirTempC: number): number => Math.floor(outdoorAirTempC / BIN_WIDTH_K) * BIN_WIDTH_K;

/** Annual occupied cooling-season hours in one outdoor bin. */
export type AnnualBin = { lowC: number; hours: number };

/**
 * Occupied hours of a weather year by outdoor bin, counting only hours at or above the cooling-season threshold, so
 * that the bin that the threshold cuts is cut on both sides of the comparison. `occupied` is 0 or 1 (or the occupied
 * part of the hour) for each hour of `outdoorAirTempC`.
 */
export function annualOccupiedBins(
  year: { outdoorAirTempC: ArrayLike<number>; occupied: ArrayLike<number> },
  seasonThresholdC: number,
): AnnualBin[] {
  if (year.outdoorAirTempC.length !== year.occupied.length) {
    throw new RangeError("the weather year and its occupied hours must have the same length");
  }
  const hours = new Map<number, number>();
  for (let i = 0; i < year.outdoorAirTempC.length; i++) {
    const outdoor = year.outdoorAirTempC[i] as number;
    const part = year.occupied[i] as number;
    if (!(outdoor >= seasonThresholdC) || part === 0) continue;
    const low = binLowC(outdoor);
    hours.set(low, (hours.get(low) ?? 0) + part);
  }
  return [...hours].map(([lowC, each]) => ({ lowC, hours: each })).sort((a, b) => a.lowC - b.lowC);
}
