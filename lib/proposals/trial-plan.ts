import type { LocalDate } from "@/lib/time/civil-date";

/** Limits set before a trial begins; the first that is reached stops it. */
export type StopRules = {
  /** Hot reports a week from all zones of the proposal. */
  hotReportsPerWeek: number;
  /** Predicted percentage of dissatisfied at the warmest zone's mean air temperature [%]. */
  dissatisfiedPct: number;
  /** Zone air temperature [°C], mean of an occupied day. */
  zoneAirTempC: number;
};

/**
 * Alternate weeks in a drawn order; one washout day begins each week. `beginsOn` is the first day of the first week;
 * proposals of before 30 November 2026 have none, and theirs begin with the window after.
 */
export type Switchback = { pairs: number; seed: number; beginsOn?: LocalDate };

/** How a proposal is tried out: in steps, or by alternate weeks of the old and the new setting in a drawn order. */
export type TrialPlan = {
  /** Kelvin (or the same share of another lever's amount) a week, 0.5 to 1. */
  stepKPerWeek: number;
  stopRules: StopRules;
  /** Null for a trial in steps. */
  switchback: Switchback | null;
  /** Notice to occupants as it will be posted. */
  notice: string;
};
