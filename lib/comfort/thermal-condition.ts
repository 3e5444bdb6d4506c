/** What the heat balance of a person depends on, as ISO 7730 and ASHRAE 55 name it. */
export type ThermalCondition = {
  airTempC: number;
  /** Mean radiant temperature. */
  radiantTempC: number;
  /** Speed of the air relative to the person, own movement counted in (`relativeAirSpeed`). */
  relAirSpeedMps: number;
  relHumidityPct: number;
  /** Metabolic rate; 1 met is 58.15 W/m². */
  metabolicRateMet: number;
  /** Insulation of the clothing as it is worn (`dynamicClothing`); 1 clo is 0.155 m²K/W. */
  clothingClo: number;
  /** Mechanical power given off; 0 for office work. */
  externalWorkMet?: number;
};

/** W/m² of skin for 1 met, and m²K/W for 1 clo (ISO 7730:2005, clause 4.1). */
export const WATTS_PER_MET = 58.15;
export const INSULATION_PER_CLO = 0.155;
