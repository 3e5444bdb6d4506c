/** One square foot in square metres: 0.3048² exactly (international foot, 1959). */
export const M2_PER_FT2 = 0.09290304;

export const m2FromFt2 = (areaFt2: number): number => areaFt2 * M2_PER_FT2;
export const ft2FromM2 = (areaM2: number): number => areaM2 / M2_PER_FT2;
