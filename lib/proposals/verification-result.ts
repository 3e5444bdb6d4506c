import type { ProofVerdict } from "./verification-plan";

/** One measured quantity before and after, with what the numbers say of it. */
export type Proof = {
  id: "zone-air" | "degree-hours" | "cold-reports" | "hot-reports" | "heaters" | "energy";
  label: string;
  unit: string;
  before: number | null;
  after: number | null;
  /** Change (a ratio for rates of reports) with its interval. */
  change: number | null;
  low: number | null;
  high: number | null;
  /** Confidence of the interval, 0 to 1. */
  confidence: number;
  verdict: ProofVerdict;
  /** What was found, in words with the numbers. */
  sentence: string;
};

export type VerificationResult = { verdict: ProofVerdict; sentence: string; proofs: Proof[] };
