/** What a trend point is. Zone points belong to one zone; the outdoor and supply points to the building. */
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
  "supply-air-temp",
  "outdoor-air-temp",
] as const;

export type PointKind = (typeof POINT_KINDS)[number];

/** Unit in which the samples of a kind are stored: SI, except percentages. States are 0 or 1. */
export const STORED_UNIT: Record<PointKind, "degC" | "m3ps" | "percent" | "state"> = {
  "zone-air-temp": "degC",
  "cooling-setpoint": "degC",
  "heating-setpoint": "degC",
  airflow: "m3ps",
  "airflow-setpoint": "m3ps",
  "damper-position": "percent",
  "reheat-valve": "percent",
  "discharge-air-temp": "degC",
  occupancy: "state",
  "supply-air-temp": "degC",
  "outdoor-air-temp": "degC",
};

/** Kinds that describe the whole building (or its air handler) and may be mapped to no zone. */
export const BUILDING_KINDS: readonly PointKind[] = ["supply-air-temp", "outdoor-air-temp"];

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
  "supply-air-temp": 3,
  "outdoor-air-temp": 3,
};
