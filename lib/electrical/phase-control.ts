/** RMS of a sine of this peak. */
export const rmsOfPeak = (peakA: number): number => peakA / Math.SQRT2;

/**
 * What meters show of a heating element behind a phase control, which lets each half wave through from the firing angle on.
 * True RMS is the integral of the square; an average-responding meter shows the rectified mean times the form factor of a whole
 * sine, π/(2·√2) = 1.11 (textbook integrals). The power factor is that of a resistance on a sine.
 */
export function phaseControlled(load: { firingAngleDeg: number; peakA: number }): {
  trueRmsA: number;
  averageRespondingA: number;
  errorFraction: number;
  powerFactor: number;
} {
  const angle = (load.firingAngleDeg * Math.PI) / 180;
  const trueRmsA = load.peakA * Math.sqrt((Math.PI - angle + Math.sin(2 * angle) / 2) / (2 * Math.PI));
  const rectifiedMeanA = (load.peakA / Math.PI) * (1 + Math.cos(angle));
  const averageRespondingA = (rectifiedMeanA * Math.PI) / (2 * Math.SQRT2);
  return {
    trueRmsA,
    averageRespondingA,
    errorFraction: averageRespondingA / trueRmsA - 1,
    powerFactor: trueRmsA / rmsOfPeak(load.peakA),
  };
}
