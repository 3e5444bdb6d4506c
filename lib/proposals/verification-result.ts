import type { Working } from "@/lib/working/working";
import type { DateWindow, ProofVerdict, VerificationMethod } from "./verification-plan";

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
  /** How change and interval were worked out; results of before 30 November 2026 have none. */
  workings?: Working[];
};

/** A sum of energy or money that a proof comes to, over the days of its window after. */
export type ProofSum = {
  id: "avoided" | "worth" | "expected" | "expected-worth";
  label: string;
  unit: string;
  value: number;
  low: number | null;
  high: number | null;
  working: Working;
};

/** Parts of a saving that follow the air of the zones, by the names that the cost of overcooling has for them. */
export const AIR_PARTS = ["setpoint", "deadband", "reheat", "fan"] as const;
export type AirPart = (typeof AIR_PARTS)[number];

/** What a proof measured of a change, beside what the model makes of the same change: electricity of an occupied day [kWh]. */
export type VerifiedSaving = {
  measuredKwh: number;
  /** Of the measured saving, one standard deviation. */
  standardErrorKwh: number;
  days: number;
  meter: string;
  /** Of the parts that follow the zone air, as issued, while the change is in force. */
  modelledAirKwh: number;
  parts: AirPart[];
  /** Of heaters given up less what came in their place, as issued. */
  heatersKwh: { value: number; low: number; high: number };
  /** Rise of the zones' mean air [K], as measured and as issued. */
  riseK: number;
  expectedRiseK: number;
};

/** `sums` and `saving` are there where a meter tells energy; results of before 30 November 2026 have neither, nor `by`. */
export type VerificationResult = {
  verdict: ProofVerdict;
  sentence: string;
  proofs: Proof[];
  /** The plan that it was worked out by. */
  by?: { method: VerificationMethod; before: DateWindow; after: DateWindow };
  sums?: ProofSum[];
  saving?: VerifiedSaving;
};
