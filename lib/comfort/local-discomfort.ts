/** A share of people dissatisfied by a part of the body, or why the model says nothing. */
export type LocalDissatisfied = { status: "ok"; pct: number } | { status: "outside-limits"; low: number; high: number };

const within = (value: number, low: number, high: number, pct: () => number): LocalDissatisfied =>
  // False for NaN as well.
  value >= low && value < high ? { status: "ok", pct: Math.max(0, pct()) } : { status: "outside-limits", low, high };

/** By the air at the head (1.1 m) being warmer than at the ankles (0.1 m) [K]. ISO 7730:2005, equation 7. */
export const dissatisfiedByLayers = (differenceK: number): LocalDissatisfied =>
  within(differenceK, 0, 8, () => 100 / (1 + Math.exp(5.76 - 0.856 * differenceK)));

/** By the temperature of the floor [°C], in shoes. ISO 7730:2005, equation 8; drawn there from 5 to 40 °C. */
export const dissatisfiedByFloor = (floorTempC: number): LocalDissatisfied =>
  within(floorTempC, 5, 40, () => 100 - 94 * Math.exp(-1.387 + 0.118 * floorTempC - 0.0025 * floorTempC ** 2));

export const ASYMMETRIES = ["warm-ceiling", "cool-wall", "cool-ceiling", "warm-wall"] as const;
export type Asymmetry = (typeof ASYMMETRIES)[number];

/** Terms of ISO 7730:2005, equations 9 to 12: 100 / (1 + exp(a - b d)) - c below a difference of radiant temperature. */
const ASYMMETRY: Record<Asymmetry, { a: number; b: number; c: number; belowK: number }> = {
  "warm-ceiling": { a: 2.84, b: 0.174, c: 5.5, belowK: 23 },
  "cool-wall": { a: 6.61, b: 0.345, c: 0, belowK: 15 },
  "cool-ceiling": { a: 9.93, b: 0.5, c: 0, belowK: 15 },
  "warm-wall": { a: 3.72, b: 0.052, c: 3.5, belowK: 35 },
};

/** By a surface that is warmer or cooler than what is across from it [K of radiant temperature]. */
export function dissatisfiedByAsymmetry(surface: Asymmetry, differenceK: number): LocalDissatisfied {
  const { a, b, c, belowK } = ASYMMETRY[surface];
  return within(differenceK, 0, belowK, () => 100 / (1 + Math.exp(a - b * differenceK)) - c);
}

/**
 * By air that moves at the ankles [m/s] of people whose whole body votes `pmv`. Liu and others 2017 (ASHRAE 55-2020), as
 * public implementations have it: lightly clothed, seated, slow air about the rest of the body.
 */
export function dissatisfiedByAnkleDraught(ankleAirSpeedMps: number, pmv: number): number {
  const logit = -2.58 + 3.05 * ankleAirSpeedMps - 1.06 * pmv;
  return (100 * Math.exp(logit)) / (1 + Math.exp(logit));
}

/** By a vertical gradient of air temperature [K/m] under a whole-body vote. ASHRAE 55-2020, as public implementations have it. */
export function dissatisfiedByGradient(gradientKPerM: number, pmv: number): number {
  const odds = Math.exp(0.13 * (pmv - 1.91) ** 2 + 0.15 * gradientKPerM - 1.6);
  return Math.max(0, 100 * (odds / (1 + odds) - 0.345));
}
