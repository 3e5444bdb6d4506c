/**
 * Mean share of the first year in which a change is still in force, when it is undone at a steady rate, once in
 * `lifeYears` on average: integral of exp(-t / L) over the first year, L · (1 - e^(-1/L)).
 */
export const firstYearFraction = (lifeYears: number): number => lifeYears * (1 - Math.exp(-1 / lifeYears));
