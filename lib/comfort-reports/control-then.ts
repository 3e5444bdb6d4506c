/** How a zone's air stood to its setpoints. `between`: neither heating nor cooling was called for. */
export type ControlThen = "near-cooling" | "near-heating" | "between" | "above-cooling" | "below-heating" | "unknown";

/** Air so near a setpoint is held by it [K]: the throttling range of common zone controllers. Common practice, no source. */
const NEAR_K = 0.5;

/** Says whether the controls held the zone, from its air and the setpoints in force [°C]; null where none is recorded. */
export function controlThen(air: {
  zoneAirTempC: number | null;
  coolingSetpointC: number | null;
  heatingSetpointC: number | null;
}): ControlThen {
  const { zoneAirTempC, coolingSetpointC, heatingSetpointC } = air;
  if (zoneAirTempC === null || (coolingSetpointC === null && heatingSetpointC === null)) return "unknown";
  const overCooling = coolingSetpointC === null ? null : zoneAirTempC - coolingSetpointC;
  const underHeating = heatingSetpointC === null ? null : heatingSetpointC - zoneAirTempC;
  if (overCooling !== null && overCooling > NEAR_K) return "above-cooling";
  if (underHeating !== null && underHeating > NEAR_K) return "below-heating";
  if (overCooling !== null && overCooling >= -NEAR_K) return "near-cooling";
  if (underHeating !== null && underHeating >= -NEAR_K) return "near-heating";
  return "between";
}

/** The same in words. */
export const CONTROL_WORDS: Record<ControlThen, string> = {
  "near-cooling": "held at its cooling setpoint: the setpoint made it so cool",
  "near-heating": "held at its heating setpoint",
  between: "between its setpoints: what the air brought in, and not a setpoint, made it so",
  "above-cooling": "warmer than its cooling setpoint: the controls did not keep up",
  "below-heating": "colder than its heating setpoint: the controls did not keep up",
  unknown: "not known: its air or its setpoints are not recorded for that moment",
};
