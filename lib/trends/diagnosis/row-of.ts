import type { CauseCode } from "./zone-evidence";

/** Row of the decision table (reference D7) that a cause belongs to; the shares of the zone verdict stand under the table. */
export const ROW_OF: Record<CauseCode, number | null> = {
  "sensor-bias": 1,
  "heater-warms-thermostat": 1,
  "cold-reports-at-target": 1,
  "setpoint-stepped-down": 2,
  "setback-not-followed": 2,
  "cold-start": 3,
  "airflow-above-command": 4,
  "reheat-valve-leaking": 5,
  "reheat-without-heat": 6,
  "reheat-at-minimum": 7,
  "minimum-airflow-overcooling": 8,
  "single-maximum": 9,
  "supply-air-not-reset": 10,
  "supply-air-held-for-humidity": 11,
  "narrow-deadband": 12,
  "setpoint-too-low": 13,
  "one-cold-desk": 14,
  "short-of-air": 15,
  "hot-reports": 15,
  "short-compressor-runs": 16,
  "cold-without-cooling": 16,
  "rooms-of-different-needs": 17,
  "degree-hours-at-minimum": null,
  "degree-hours-in-cooling": null,
};
