/** What an engineer says of a verdict: it is right, it is wrong, or something to know beside it. */
export const VERDICT_STANCES = ["confirmed", "rejected", "noted"] as const;
export type VerdictStance = (typeof VERDICT_STANCES)[number];
