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
