import type { HeatingFuel, SystemType } from "@/lib/assumptions/system-type";

export const SYSTEM_LABEL: Record<SystemType, string> = {
  "vav-reheat-high-minimum": "VAV with reheat, minimum airflow about 30 % or more",
  "vav-reheat-low-minimum": "VAV with reheat, minimum airflow 20 % or less",
  "vav-reheat-minimum-unknown": "VAV with reheat, minimum airflow not known",
  "single-zone-dx": "Packaged units, one zone each",
  "fan-coil": "Fan coils",
  "heat-pump": "Heat pumps, one zone each",
};

export const FUEL_LABEL: Record<HeatingFuel, string> = {
  gas: "Gas",
  electricity: "Electricity",
  district: "District heat",
};
