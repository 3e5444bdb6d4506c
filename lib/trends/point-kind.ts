/**
 * What a trend point is. Zone points belong to one zone; outdoor air, supply air and electricity meters to the building. A
 * meter gives the mean power of each interval or the energy of each interval, never a running total. A cooling stage is a
 * compressor or coil valve of a unit that serves the zone alone; heater power is what a portable heater's own plug meter reads.
 */
export const POINT_KINDS = [
  "zone-air-temp",
  "cooling-setpoint",
  "heating-setpoint",
  "airflow",
  "airflow-setpoint",
  "damper-position",
  "reheat-valve",
  "discharge-air-temp",
  "occupancy",
  "cooling-stage",
  "heater-power",
  "relative-humidity",
  "supply-air-temp",
  "outdoor-air-temp",
  "meter-power",
  "meter-energy",
] as const;

export type PointKind = (typeof POINT_KINDS)[number];

export type StoredUnit = "degC" | "m3ps" | "percent" | "percentRH" | "state" | "W" | "kW" | "kWh";

/** Unit in which the samples of a kind are stored: SI, except percentages, and kWh as meters count. States are 0 or 1. */
export const STORED_UNIT: Record<PointKind, StoredUnit> = {
  "zone-air-temp": "degC",
  "cooling-setpoint": "degC",
  "heating-setpoint": "degC",
  airflow: "m3ps",
  "airflow-setpoint": "m3ps",
  "damper-position": "percent",
  "reheat-valve": "percent",
  "discharge-air-temp": "degC",
  occupancy: "state",
  "cooling-stage": "state",
  "heater-power": "W",
  "relative-humidity": "percentRH",
  "supply-air-temp": "degC",
  "outdoor-air-temp": "degC",
  "meter-power": "kW",
  "meter-energy": "kWh",
};

/** Kinds of an electricity meter. */
export const METER_KINDS = ["meter-power", "meter-energy"] as const satisfies readonly PointKind[];
export type MeterKind = (typeof METER_KINDS)[number];

/** Kinds that may be mapped to no zone: they describe the whole building or its air handler (humidity: of its return air). */
export const BUILDING_KINDS: readonly PointKind[] = [
  "supply-air-temp",
  "outdoor-air-temp",
  "relative-humidity",
  ...METER_KINDS,
];

/** Decimals kept per kind when samples are stored as scaled integers. */
export const STORED_DECIMALS: Record<PointKind, number> = {
  "zone-air-temp": 3,
  "cooling-setpoint": 3,
  "heating-setpoint": 3,
  airflow: 5,
  "airflow-setpoint": 5,
  "damper-position": 1,
  "reheat-valve": 1,
  "discharge-air-temp": 3,
  occupancy: 0,
  "cooling-stage": 0,
  "heater-power": 1,
  "relative-humidity": 1,
  "supply-air-temp": 3,
  "outdoor-air-temp": 3,
  "meter-power": 3,
  "meter-energy": 3,
};
