/**
 * The least number of people that reports can be of, by the desk of each: each desk is one, and all reports without a desk are
 * one together, since those who share a zone's link, or phone, cannot be told apart.
 */
export const leastPeople = (desks: readonly (number | string | null)[]): number => new Set(desks).size;
