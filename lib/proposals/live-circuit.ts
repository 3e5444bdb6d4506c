import type { Working } from "@/lib/working/working";

/** A device on a branch circuit, by the current of its highest setting [A]. */
export type LiveCircuitDevice = {
  label: string;
  zoneId: number;
  isHeater: boolean;
  currentA: number;
  /** 3 h or more at its highest, or unknown. */
  isContinuous: boolean;
};

/** A branch circuit with heaters or fans of the register, as its own page judges it. */
export type LiveCircuit = {
  circuitId: number;
  name: string;
  ratingA: number | null;
  voltageV: number | null;
  /** What the code plans the breaker for continuously [A]; null without a rating. */
  limitA: number | null;
  /** Rating over planning limit. */
  continuousFactor: number;
  /** What else is on it [A]; null while nobody knows it. */
  baseContinuousA: number | null;
  baseNonContinuousA: number | null;
  /** Devices of which no current is known. */
  unknownLoads: readonly string[];
  devices: readonly LiveCircuitDevice[];
};

/** Beyond the last digit of any meter. */
const EXCESS_A = 1e-9;

/** Whether a load lies above a planning limit; not where there is none. */
export const isAboveLimit = (loadA: number, limitA: number | null): boolean =>
  limitA !== null && loadA > limitA + EXCESS_A;

export const CIRCUIT_OUTCOMES = {
  "below-as-expected": "above its planning limit today, below it as heaters are expected to go",
  "below-if-all-go": "above its planning limit today; below it only when all heaters of these zones go",
  "stays-above": "stays above its planning limit: other loads are too much by themselves",
  below: "below its planning limit already",
  "not-known": "no verdict: its rating, base load or a device's current is not known",
} as const;
export type CircuitOutcome = keyof typeof CIRCUIT_OUTCOMES;

/**
 * Load of a circuit that heaters of the proposal's zones hang on [A], everything at its highest setting, counted as its
 * planning limit counts it: today, as heaters are expected to go, and with all of them gone.
 */
export type CircuitRelief = {
  circuitId: number;
  name: string;
  limitA: number | null;
  todayA: number;
  expectedA: number;
  allGoneA: number;
  /** Labels of the heaters of the proposal's zones on it. */
  heaters: string[];
  outcome: CircuitOutcome;
  /** Of the expected load. */
  working: Working;
};
