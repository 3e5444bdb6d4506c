import type { PointKind } from "@/lib/trends/point-kind";

export const KIND_LABEL: Record<PointKind, string> = {
  "zone-air-temp": "zone air temperature",
  "cooling-setpoint": "cooling setpoint",
  "heating-setpoint": "heating setpoint",
  airflow: "airflow",
  "airflow-setpoint": "airflow setpoint",
  "damper-position": "damper position",
  "reheat-valve": "reheat valve or output",
  "discharge-air-temp": "discharge air temperature",
  occupancy: "occupancy",
  "cooling-stage": "cooling stage or compressor (unit of one zone)",
  "heater-power": "power of a portable heater",
  "relative-humidity": "relative humidity of the zone or the return air",
  "supply-air-temp": "supply air temperature (air handler)",
  "outdoor-air-temp": "outdoor air temperature",
  "meter-power": "electricity meter: power (kW)",
  "meter-energy": "electricity meter: energy of each interval (kWh)",
};

/** Everything that can be said of a point, as choices of a list. */
export const WHAT_CHOICES: readonly { value: string; label: string }[] = [
  ...Object.entries(KIND_LABEL).map(([value, label]) => ({ value, label })),
  { value: "skip", label: "leave it out" },
  { value: "ask-again", label: "leave it out this time, ask again" },
];

export const UNIT_WORDS: Record<string, string> = {
  degF: "°F",
  degC: "°C",
  kelvin: "K",
  percent: "%",
  percentRH: "%RH",
  m3PerHour: "m³/h",
  m3PerSecond: "m³/s",
  litrePerSecond: "L/s",
  other: "another unit",
};
export const unitWord = (unit: string): string => UNIT_WORDS[unit] ?? unit;
