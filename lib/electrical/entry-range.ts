/** A range that a typed number must lie in, and what it is. */
export type EntryRange = { what: string; example: string; low: number; high: number; unit: string };

/** Accuracy that clamp meters state. Common practice, no source: house limits. */
export const METER_LIMITS = {
  accuracyPct: { what: "The meter's accuracy", example: "2", low: 0, high: 20, unit: "%" },
  accuracyCounts: { what: "The meter's counts", example: "5", low: 0, high: 100, unit: "digits" },
} as const satisfies Record<string, EntryRange>;

export const USE_LIMITS = {
  hoursPerDay: { what: "Hours a day", example: "3", low: 0, high: 24, unit: "h" },
  daysPerYear: { what: "Days a year", example: "120", low: 0, high: 366, unit: "days" },
} as const satisfies Record<string, EntryRange>;

/** What is wrong with a number that must lie in a range; null when nothing is, and when nothing was typed. */
export function withinFault(
  value: number | null | undefined,
  { what, example, low, high, unit }: EntryRange,
): string | null {
  if (value === null || value === undefined) return null;
  if (!Number.isFinite(value)) return `${what} is not a number. Type digits only, for example ${example}.`;
  if (value >= low && value <= high) return null;
  return `${what} lies between ${low} and ${high} ${unit}; ${value} was typed.`;
}
