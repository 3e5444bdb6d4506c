/** Turbulence intensity of mixing ventilation where it was not measured [%] (ISO 7730:2005, clause 6.2). */
export const USUAL_TURBULENCE_PCT = 40;

/** Air so slow is not felt [m/s]. */
const STILL_MPS = 0.05;

/** Range that the model was made for (ISO 7730:2005, clause 6.2; from memory): people who sit, whole body near neutral. */
export const DRAUGHT_LIMITS = { airTempC: [20, 26], airSpeedMps: [0, 0.5], turbulencePct: [10, 60] } as const;

export type DraughtCondition = { airTempC: number; airSpeedMps: number; turbulencePct?: number };

/** Share of people who would feel a draught at the neck [%], 0 to 100. ISO 7730:2005, equation 6. */
export function draughtRatePct({
  airTempC,
  airSpeedMps,
  turbulencePct = USUAL_TURBULENCE_PCT,
}: DraughtCondition): number {
  const speed = Math.max(STILL_MPS, airSpeedMps);
  const rate = (34 - airTempC) * (speed - STILL_MPS) ** 0.62 * (0.37 * speed * turbulencePct + 3.14);
  return Math.min(100, Math.max(0, rate));
}

/** Air speed [m/s] at which a share of people [%] would feel a draught. */
export function draughtSpeedMps(ratePct: number, { airTempC, turbulencePct }: Omit<DraughtCondition, "airSpeedMps">) {
  let low = STILL_MPS;
  let high = 5;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (draughtRatePct({ airTempC, airSpeedMps: middle, turbulencePct }) < ratePct) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
