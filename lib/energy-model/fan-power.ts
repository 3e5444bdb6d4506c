/**
 * Coefficients of the part-load curve of a variable-speed supply fan, 0 to 3rd power of the airflow fraction:
 * ASHRAE 90.1 Appendix G, table of VAV fans (from memory), as used in the reference, section I.
 */
export const FAN_CURVE = [0.0013, 0.147, 0.9506, -0.0998] as const;

/** Airflow fraction below which a fan is held by its controls (ComStock documentation: 25 %). */
export const FAN_FLOOR_FRACTION = 0.25;

/** Share of design power [-] at an airflow fraction of design, which is held between the fan's floor and 1. */
export function fanPowerFraction(airflowFraction: number): number {
  const x = Math.min(1, Math.max(FAN_FLOOR_FRACTION, airflowFraction));
  const [a, b, c, d] = FAN_CURVE;
  return a + b * x + c * x ** 2 + d * x ** 3;
}
