import type { Finding } from "@/lib/findings/finding";
import type { GroupOffset } from "../group-offsets";
import type { HeaterJumps } from "../heater-jumps";
import type { AirflowLimits } from "../state";
import type { ZoneExposure } from "../zone-exposure";
import type { ZoneStatistics } from "../zone-statistics";

/** One comfort report filed in occupied hours of the record. `desk` is null for a report of the zone as a whole. */
export type ReportEvidence = {
  desk: string | null;
  /** Whether it came from a desk that is no longer known: such reports do not tell one desk from the zone. */
  isDeskDeleted?: boolean;
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

/** What the zones of one air handler do together. */
export type AirHandlerEvidence = {
  /** "" where the zones' records name none. */
  name: string;
  /** Zones with a record. */
  zones: number;
  /** Codes of those at their minimum airflow or reheating it (rows 7 and 8), and of those that all their air does not hold. */
  zonesAtMinimum: readonly string[];
  zonesShortOfAir: readonly string[];
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
  /** Heaters in use, and the hours a year for which they are switched on by the register, together. */
  heaterCount: number;
  heaterHoursPerYear: number;
  heaterJumps: HeaterJumps | null;
  /** Whether a unit of its own cools the zone (packaged unit, fan coil, heat pump) and no box of an air handler. */
  singleZone: boolean;
  /** Null where the supply air cannot be attributed to the zone's air handler. */
  airHandler: AirHandlerEvidence | null;
};

export const CAUSE_CODES = [
  "sensor-bias",
  "heater-warms-thermostat",
  "cold-reports-at-target",
  "setpoint-stepped-down",
  "setback-not-followed",
  "cold-start",
  "airflow-above-command",
  "reheat-valve-leaking",
  "reheat-without-heat",
  "reheat-at-minimum",
  "minimum-airflow-overcooling",
  "single-maximum",
  "supply-air-not-reset",
  "supply-air-held-for-humidity",
  "degree-hours-at-minimum",
  "narrow-deadband",
  "setpoint-too-low",
  "degree-hours-in-cooling",
  "one-cold-desk",
  "short-of-air",
  "hot-reports",
  "short-compressor-runs",
  "cold-without-cooling",
  "rooms-of-different-needs",
] as const;

export type CauseCode = (typeof CAUSE_CODES)[number];
export type Cause = Finding<CauseCode>;

/** A rule looks at the evidence and names its cause, or nothing. */
export type Rule = (zone: ZoneEvidence) => Cause | null;
