export const VERIFICATION_METHODS = ["before-after", "switchback"] as const;
export type VerificationMethod = (typeof VERIFICATION_METHODS)[number];

export const VERDICTS = ["shown", "not-shown", "too-early", "worse"] as const;
export type ProofVerdict = (typeof VERDICTS)[number];

/** Days of the building's calendar, both ends included. */
export type DateWindow = { from: string; to: string };

export const PROOF_VERDICT_WORDS: Record<ProofVerdict, string> = {
  shown: "Shown: the effect stands out of the noise",
  "not-shown": "Not shown: the data would have shown the expected effect, and do not",
  "too-early": "Too early: the data are too few to tell",
  worse: "Worse: something moved the wrong way beyond the noise",
};
