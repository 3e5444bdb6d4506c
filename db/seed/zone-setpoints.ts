import { type DemoCalendar, STEP_SECONDS } from "./demo-calendar";

/** Setpoints of a zone in the day programme, and what somebody did to them. */
export type ZoneProgramme = {
  coolingSetpointC: number;
  heatingSetpointC: number;
  /** From this instant the cooling setpoint stands this much lower, day and night. */
  override: { fromUtcSeconds: number; dropK: number } | null;
};

/** Night and weekend: 85 °F and 64 °F, common practice, no source. */
export const NIGHT_COOLING_SETPOINT_C = (85 - 32) / 1.8;
export const NIGHT_HEATING_SETPOINT_C = (64 - 32) / 1.8;

/** A controller keeps its heating setpoint this far below an overridden cooling setpoint. Common practice, no source. */
const LEAST_DEADBAND_K = 1.5;

/** Active setpoints of each step. */
export function activeSetpoints(
  programme: ZoneProgramme,
  calendar: DemoCalendar,
): { coolingC: Float64Array; heatingC: Float64Array } {
  const { span, systemOn } = calendar;
  const coolingC = new Float64Array(span.count);
  const heatingC = new Float64Array(span.count);
  for (let i = 0; i < span.count; i++) {
    const on = systemOn[i] === 1;
    const { override } = programme;
    const overridden = override !== null && span.startUtcSeconds + i * STEP_SECONDS >= override.fromUtcSeconds;
    const byDayC = programme.coolingSetpointC - (overridden ? override.dropK : 0);
    const activeC = on || overridden ? byDayC : NIGHT_COOLING_SETPOINT_C;
    coolingC[i] = activeC;
    heatingC[i] = Math.min(on ? programme.heatingSetpointC : NIGHT_HEATING_SETPOINT_C, activeC - LEAST_DEADBAND_K);
  }
  return { coolingC, heatingC };
}
