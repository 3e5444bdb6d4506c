/** An ensemble of clothing with its insulation [clo], without a chair. */
export type Ensemble = { id: string; label: string; clo: number };

export const CLOTHING_SOURCE = "ASHRAE 55, typical ensembles and garments, as public implementations have them";

/** Sorted by insulation. */
export const ENSEMBLES: readonly Ensemble[] = [
  { id: "shorts-short-sleeves", label: "Shorts, short sleeves", clo: 0.36 },
  { id: "skirt-short-sleeves", label: "Knee-length skirt, short sleeves, sandals", clo: 0.54 },
  { id: "trousers-short-sleeves", label: "Trousers, short sleeves", clo: 0.57 },
  { id: "trousers-long-sleeves", label: "Trousers, long sleeves", clo: 0.61 },
  { id: "skirt-long-sleeves", label: "Knee-length skirt, long sleeves, full slip", clo: 0.67 },
  { id: "sweat-suit", label: "Sweat suit", clo: 0.74 },
  { id: "jacket-trousers", label: "Jacket, trousers, long sleeves", clo: 0.96 },
];

/** What people wear in an office by season when nobody says [clo], with the range of their habits. */
export const SEASON_CLOTHING = {
  summer: { clo: 0.5, lowClo: 0.4, highClo: 0.7 },
  winter: { clo: 1, lowClo: 0.7, highClo: 1.1 },
} as const;
export const SEASON_CLOTHING_SOURCE =
  "ASHRAE 55, typical indoor clothing of summer and winter; the ranges hold what field studies recorded (0.61 clo in summer, 0.81 in winter on average; ASHRAE Global Thermal Comfort Database II)";

/** What a chair adds [clo]. */
export const CHAIR_CLO = { net: 0, stool: 0.01, office: 0.1, executive: 0.15 } as const;

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
