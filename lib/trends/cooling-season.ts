import type { ZoneGrids } from "./zone-grids";

/**
 * Marks the occupied intervals with zone air in the cooling season: outdoor air at or above the threshold (the supply
 * air temperature: below it outdoor air alone would cool). All of them when there is no outdoor record at all; where
 * an existing record has a gap the interval is left out, since it cannot be placed.
 */
export function coolingSeasonMask(grids: ZoneGrids, seasonThresholdC: number): Uint8Array {
  const { occupied, zoneAirTempC, outdoorAirTempC } = grids;
  const mask = new Uint8Array(occupied.length);
  for (let i = 0; i < mask.length; i++) {
    if (occupied[i] !== 1 || Number.isNaN(zoneAirTempC[i] as number)) continue;
    if (!outdoorAirTempC || (outdoorAirTempC[i] as number) >= seasonThresholdC) mask[i] = 1;
  }
  return mask;
}
