/** Coverage factor of an expanded uncertainty: about 95 % (JCGM 100:2008, 6.2.2 and 6.3.3). */
export const COVERAGE_FACTOR = 2;

/** Accuracy of a clamp meter that states none: ± 2 % and 5 counts, a common specification, from memory. */
export const USUAL_CLAMP_ACCURACY = { pct: 2, counts: 5 } as const;

/**
 * Half-width of a current read with a clamp meter: its stated share of what it showed and counts of its last digit. A conductor
 * that passes the jaws `turns` times shows as often the current, and brings the width down with it.
 */
export function clampHalfWidthA(reading: {
  currentA: number;
  resolutionA: number;
  turns?: number;
  accuracyPct?: number | null;
  accuracyCounts?: number | null;
}): number {
  const turns = reading.turns ?? 1;
  const pct = reading.accuracyPct ?? USUAL_CLAMP_ACCURACY.pct;
  const counts = reading.accuracyCounts ?? USUAL_CLAMP_ACCURACY.counts;
  return (pct / 100) * reading.currentA + (counts * reading.resolutionA) / turns;
}

/**
 * Half-width of a voltage: ±1 % when read at the outlet. Otherwise the supply's own tolerance: ±10 % about 230 V
 * (EN 50160), ±5 % elsewhere (ANSI C84.1 range A); both from memory.
 */
export function voltageHalfWidthV(voltage: { voltageV: number; measured: boolean }): number {
  if (voltage.measured) return 0.01 * voltage.voltageV;
  return (isNear230V(voltage.voltageV) ? 0.1 : 0.05) * voltage.voltageV;
}

export const isNear230V = (voltageV: number): boolean => Math.abs(voltageV - 230) <= 10;

/** Half-width of a power factor that was not read with the current: heating element 0.01, motor 0.15 (judgement). */
export const POWER_FACTOR_HALF_WIDTH = { element: 0.01, motor: 0.15 } as const;

/** Half-width of a plug-in energy meter as a share of its reading (typical specification 1 to 2 %). */
export const PLUG_METER_HALF_WIDTH_FRACTION = 0.02;

/** Standard uncertainty of a value known only to lie within ± `halfWidth`: a/√3 (JCGM 100:2008, 4.3.7). */
export const rectangularUncertainty = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/**
 * Standard uncertainty of P = V·I·PF in W for uncorrelated inputs (JCGM 100:2008, eq. 10 with the partial
 * derivatives of the product). Stands for the sum of relative variances and holds at a current of zero too.
 */
export function productUncertaintyW(product: {
  voltageV: number;
  voltageUncertaintyV: number;
  currentA: number;
  currentUncertaintyA: number;
  powerFactor: number;
  powerFactorUncertainty: number;
}): number {
  return Math.hypot(
    product.currentA * product.powerFactor * product.voltageUncertaintyV,
    product.voltageV * product.powerFactor * product.currentUncertaintyA,
    product.voltageV * product.currentA * product.powerFactorUncertainty,
  );
}
