/** How garments make an ensemble. The two standards differ: which one was taken is kept with the sum. */
export type SumRule = "ashrae-55" | "iso-9920";

/** Insulation [clo] of garments worn together: their sum (ASHRAE 55), or 0.161 + 0.835 of it (ISO 9920). */
export function clothingOf(garmentsClo: readonly number[], rule: SumRule): number {
  const sum = garmentsClo.reduce((total, clo) => total + clo, 0);
  return rule === "ashrae-55" ? sum : 0.161 + 0.835 * sum;
}

/** Insulation [clo] as it is while people move: the air is pumped through it above 1.2 met. ASHRAE 55. */
export const dynamicClothing = (clo: number, metabolicRateMet: number): number =>
  metabolicRateMet > 1.2 ? clo * (0.6 + 0.4 / metabolicRateMet) : clo;

/**
 * Clothing [clo] that people choose by the outdoor air at six in the morning [°C], without a chair. Schiavon & Lee 2013,
 * allowed by ASHRAE 55 for mechanically conditioned buildings.
 */
export function clothingByOutdoorAir(outdoorTempC: number): number {
  if (outdoorTempC < -5) return 1;
  if (outdoorTempC < 5) return 0.818 - 0.0364 * outdoorTempC;
  if (outdoorTempC < 26) return 10 ** (-0.1635 - 0.0066 * outdoorTempC);
  return 0.46;
}
