/** What serves the zones; decides the default state shares, plant efficiency and the levers that exist. */
export const SYSTEM_TYPES = [
  "vav-reheat-high-minimum",
  "vav-reheat-low-minimum",
  "vav-reheat-minimum-unknown",
  "single-zone-dx",
  "fan-coil",
  "heat-pump",
] as const;
export type SystemType = (typeof SYSTEM_TYPES)[number];

export const VAV_SYSTEM_TYPES = [
  "vav-reheat-high-minimum",
  "vav-reheat-low-minimum",
  "vav-reheat-minimum-unknown",
] as const satisfies readonly SystemType[];
export type VavSystemType = (typeof VAV_SYSTEM_TYPES)[number];

export const isVav = (system: SystemType): system is VavSystemType =>
  (VAV_SYSTEM_TYPES as readonly SystemType[]).includes(system);

export const SYSTEM_LABELS: Record<SystemType, string> = {
  "vav-reheat-high-minimum": "VAV with reheat, minimum airflow 30 % or more",
  "vav-reheat-low-minimum": "VAV with reheat, minimum airflow 20 % or less",
  "vav-reheat-minimum-unknown": "VAV with reheat, minimum airflow not known",
  "single-zone-dx": "single-zone packaged cooling",
  "fan-coil": "fan-coil units",
  "heat-pump": "heat pumps or variable refrigerant flow",
};

/** What the heat of reheat coils is made from. */
export const HEATING_FUELS = ["gas", "electricity", "district"] as const;
export type HeatingFuel = (typeof HEATING_FUELS)[number];
