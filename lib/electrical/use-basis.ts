/** How the hours of a setting are known: logged at the plug, worked out from a schedule, told by its user, or put in as they are. */
export const USE_BASES = ["plug-logger", "schedule", "survey", "entered"] as const;
export type UseBasis = (typeof USE_BASES)[number];

const SOURCES: Record<UseBasis, string> = {
  "plug-logger": "Logged at the plug",
  schedule: "Worked out from hours a day and days a year",
  survey: "As told by its user",
  entered: "As entered",
};

export const sourceOfHours = (basis: UseBasis): string => SOURCES[basis];

/** Hours a year: hours a day times days a year where both are given for a schedule or an answer, else as they were put in. */
export function resolvedHours(use: {
  useBasis: UseBasis;
  hoursPerDay: number | null;
  daysPerYear: number | null;
  hoursPerYear: number | null;
}): number | null {
  const fromDays = use.useBasis === "schedule" || use.useBasis === "survey";
  return fromDays && use.hoursPerDay !== null && use.daysPerYear !== null
    ? use.hoursPerDay * use.daysPerYear
    : use.hoursPerYear;
}
