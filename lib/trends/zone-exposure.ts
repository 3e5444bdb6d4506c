import type { Finding } from "@/lib/findings/finding";
import type { OccupiedState } from "./zone-state";

/** Occupied cooling-season time spent in one state, as recorded. Means are weighted by time; null where nothing was recorded. */
export type StateExposure = {
  hours: number;
  /** Degree-hours below the target zone air temperature: sum of max(0, target - zone air) · dt [K·h]. */
  overcoolingKh: number;
  /** Hours with zone air below the target. */
  hoursBelowTarget: number;
  meanZoneAirTempC: number | null;
  meanCoolingSetpointC: number | null;
  meanHeatingSetpointC: number | null;
  meanAirflowM3ps: number | null;
  meanOutdoorAirTempC: number | null;
};

/** The same by outdoor air temperature, for carrying a part of a year to the whole of it. */
export type OutdoorBin = {
  lowC: number;
  highC: number;
  byState: Record<OccupiedState, { hours: number; overcoolingKh: number }>;
};

/**
 * The same below another target. Lists of numbers follow the order of `OCCUPIED_STATES`, and `binOvercoolingKh` that of
 * the exposure's outdoor bins, null where it has none.
 */
export type TargetExposure = {
  targetZoneAirTempC: number;
  hoursBelowTarget: number[];
  overcoolingKh: number[];
  binOvercoolingKh: number[][] | null;
};

/**
 * What a zone's trends say of one record period: occupied time by state, degree-hours below the target, and the
 * quality of the data. Pure numbers; times are UTC seconds.
 */
export type ZoneExposure = {
  zoneId: number;
  fromUtcSeconds: number;
  toUtcSeconds: number;
  stepSeconds: number;
  targetZoneAirTempC: number;
  /** Occupied hours with zone air data, over the whole record. */
  occupiedHours: number;
  /** Occupied hours of the record without zone air data. */
  occupiedHoursWithoutData: number;
  /** Occupied hours with data in the cooling season (outdoor air at or above the supply air temperature; all of them when no outdoor record exists). */
  coolingSeasonHours: number;
  /** Over cooling-season occupied hours. */
  byState: Record<OccupiedState, StateExposure>;
  /** Null when no outdoor record goes with the trends. Bins 3 K wide with edges at multiples of 3 °C. */
  byOutdoorBin: OutdoorBin[] | null;
  /** Against the targets of the cost's curve, whatever the zone's own is. */
  byTarget: TargetExposure[];
  /** Over all occupied hours with data. */
  occupiedZoneAirTempC: { mean: number; p5: number; p50: number; p95: number } | null;
  /** Which kinds of point the zone has in the record. */
  hasTrend: Record<
    | "coolingSetpoint"
    | "heatingSetpoint"
    | "airflow"
    | "reheatValve"
    | "dischargeAir"
    | "damper"
    | "occupancy"
    | "coolingStage",
    boolean
  >;
  findings: Finding[];
};

/** An exposure carried to a year of the building's weather and occupied hours. */
export type AnnualExposure = {
  /** Annual occupied hours in the cooling season. */
  coolingSeasonHours: number;
  byState: Record<OccupiedState, { hours: number; overcoolingKh: number }>;
  /** Share of `coolingSeasonHours` in outdoor bins with less than 20 h of record. */
  extrapolatedFraction: number;
  method: "outdoor-bins" | "season-mean";
};
