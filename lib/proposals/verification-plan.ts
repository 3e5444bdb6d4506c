export const VERIFICATION_METHODS = ["before-after", "switchback"] as const;
export type VerificationMethod = (typeof VERIFICATION_METHODS)[number];

export const VERDICTS = ["shown", "not-shown", "too-early", "worse"] as const;
export type ProofVerdict = (typeof VERDICTS)[number];

/** Days of the building's calendar, both ends included. */
export type DateWindow = { from: string; to: string };
