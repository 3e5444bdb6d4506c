/** Settings whose changes are kept. The first two are read from trends; the others are entered. */
export const CHANGED_SETTINGS = [
  "cooling-setpoint",
  "heating-setpoint",
  "minimum-airflow",
  "supply-air-temp",
  "schedule",
] as const;
export type ChangedSetting = (typeof CHANGED_SETTINGS)[number];

export const CHANGE_DECISIONS = ["confirmed", "rejected"] as const;
