import type { Verdict, ZoneDiagnosis } from "./diagnose-zone";

/** A verdict as one reads it in a table. */
export const VERDICT_WORDS: Record<Verdict, string> = {
  "setpoint-first": "setpoint too low",
  "minimum-airflow-first": "minimum airflow too high",
  "both-minimum-first": "minimum airflow, then setpoint",
  "fault-first": "fault to be repaired first",
  "rezone-first": "rooms of different needs",
  "personal-need": "one person's need",
  "too-hot": "too hot",
  healthy: "healthy",
  undetermined: "undetermined",
};

/** What a verdict proposes, as a sentence; "" where there is nothing to do. */
export const PROPOSAL_WORDS: Record<Verdict, string> = {
  "setpoint-first": "Propose a higher cooling setpoint.",
  "minimum-airflow-first": "Propose a lower minimum airflow first.",
  "both-minimum-first": "Propose a lower minimum airflow first, and a higher cooling setpoint after it.",
  "fault-first": "Put the fault right first, then look at the zone again: no setpoint or airflow is proposed before.",
  "rezone-first": "See to the thermostat and the zoning first: no setpoint is proposed.",
  "personal-need": "See to the desk, not to the zone.",
  "too-hot": "Leave the zone out of any rise of setpoints.",
  healthy: "",
  undetermined: "Nothing is proposed.",
};

/** What raising the cooling setpoint would do, as a sentence. */
export const RAISING_WORDS: Record<ZoneDiagnosis["raisingSetpointHelps"], string> = {
  yes: "Raising the cooling setpoint would warm the zone.",
  partly: "Raising the cooling setpoint would warm the zone for part of the time.",
  no: "Raising the cooling setpoint would not warm the zone.",
  "trade-off": "Raising the cooling setpoint would warm the cold rooms and make the hot ones hotter.",
  unknown: "Whether raising the cooling setpoint would warm the zone cannot be told from these trends.",
};
