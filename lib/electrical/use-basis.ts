/** How the hours of a setting are known: logged at the plug, worked out from a schedule, told by its user, or put in as they are. */
export const USE_BASES = ["plug-logger", "schedule", "survey", "entered"] as const;
export type UseBasis = (typeof USE_BASES)[number];
