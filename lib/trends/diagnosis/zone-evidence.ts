import type { Finding } from "@/lib/findings/finding";
import type { GroupOffset } from "../group-offsets";
import type { AirflowLimits } from "../state";
import type { ZoneExposure } from "../zone-exposure";
import type { ZoneStatistics } from "../zone-statistics";

/** One comfort report filed in occupied hours of the record. `desk` is null for a report of the zone as a whole. */
export type ReportEvidence = {
  desk: string | null;
  /** Thermal sensation vote, -3 cold to +3 hot. */
  thermalSensation: number;
  preference: "cooler" | "no-change" | "warmer";
  /** Zone air [°C] as recorded when the report came; null where it was not. */
  zoneAirTempC: number | null;
  /** Whether it was warm enough outdoors for mechanical cooling; true where the outdoor temperature is not trended. */
  inCoolingSeason: boolean;
};

/** What the other zones of the building do, for comparison. */
export type NeighbourEvidence = {
  zones: number;
  medianCoolingSetbackK: number | null;
  /** Instants at which other zones had a lasting step down of the cooling setpoint. */
  stepDownsUtcSeconds: readonly number[];
};

/** All that a diagnosis of one zone rests on. */
export type ZoneEvidence = {
  zoneCode: string;
  exposure: ZoneExposure;
  statistics: ZoneStatistics;
  reports: readonly ReportEvidence[];
  /** Registered desks of the zone, and the years over which its building took reports. */
  deskCount: number;
  reportYears: number;
  neighbours: NeighbourEvidence;
  /** From `groupOffsets`; null when the building has too few zones. */
  offset: GroupOffset | null;
  limits: AirflowLimits;
  minimumAirflowOrigin: "entered" | "airflow-setpoint-trend" | "estimated" | null;
  heaterCount: number;
};

export const CAUSE_CODES = [
  "sensor-bias",
  "cold-reports-at-target",
  "setpoint-stepped-down",
  "setback-not-followed",
  "cold-start",
  "airflow-above-command",
  "reheat-valve-leaking",
  "reheat-without-heat",
  "reheat-at-minimum",
  "minimum-airflow-overcooling",
  "degree-hours-at-minimum",
  "narrow-deadband",
  "setpoint-too-low",
  "degree-hours-in-cooling",
  "one-cold-desk",
  "short-of-air",
  "hot-reports",
] as const;

export type CauseCode = (typeof CAUSE_CODES)[number];
export type Cause = Finding<CauseCode>;

/** A rule looks at the evidence and names its cause, or nothing. */
export type Rule = (zone: ZoneEvidence) => Cause | null;
