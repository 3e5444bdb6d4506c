/** Limits set before a trial begins; the first that is reached stops it. */
export type StopRules = {
  /** Hot reports a week from all zones of the proposal. */
  hotReportsPerWeek: number;
  /** Predicted percentage of dissatisfied at the warmest zone's mean air temperature [%]. */
  dissatisfiedPct: number;
  /** Zone air temperature [°C], mean of an occupied day. */
  zoneAirTempC: number;
};

/** How a proposal is tried out: in steps, or by alternate weeks of the old and the new setting in a drawn order. */
export type TrialPlan = {
  /** Kelvin (or the same share of another lever's amount) a week, 0.5 to 1. */
  stepKPerWeek: number;
  stopRules: StopRules;
  /** Null for a trial in steps. One washout day begins each week. */
  switchback: { pairs: number; seed: number } | null;
  /** Notice to occupants as it will be posted. */
  notice: string;
};
