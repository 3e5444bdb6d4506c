/** Logit of a share of people at an air temperature: a + b (t - 23 °C), as means over buildings and their deviations. */
export type LogitPrior = { a: number; b: number; deviationA: number; deviationB: number };

/** Before a building's own reports: shares that want it warmer and cooler. */
export type VotePrior = { warmer: LogitPrior; cooler: LogitPrior };

export const REFERENCE_TEMP_C = 23;
/** Temperatures that the votes reach [°C]; beyond, the lines are drawn out. */
export const VOTES_REACH = { lowC: 20, highC: 27 } as const;

export const VOTE_PRIOR_SOURCE =
  "ASHRAE Global Thermal Comfort Database II, version 2.1 (doi 10.6078/D1F671, CC0): 2,872 votes of summer from 29 air-conditioned office buildings and 3,562 of winter from 26, 20 to 27 °C; logits with a building's own level and slope, own fit";

/** How a building differs from the mean of buildings, and how well that mean is known, taken together. */
const prior = (a: number, b: number, [spreadA, spreadB]: number[], [errorA, errorB]: number[]): LogitPrior => ({
  a,
  b,
  deviationA: Math.hypot(spreadA as number, errorA as number),
  deviationB: Math.hypot(spreadB as number, errorB as number),
});

/**
 * Fitted by `test/fixtures/field-votes/votes-by-building.py`. Within a building the shares change faster with temperature than over all votes taken together (-0.41 and +0.31 in summer):
 * people of cold buildings dress for them. A setpoint is moved within a building.
 */
export const VOTE_PRIORS: Record<"summer" | "winter", VotePrior> = {
  summer: {
    warmer: prior(-1.7194, -0.5426, [0.5808, 0.192], [0.1418, 0.077]),
    cooler: prior(-1.5713, 0.72, [0.7286, 0.2242], [0.1604, 0.079]),
  },
  winter: {
    warmer: prior(-1.9356, -0.7147, [0.6684, 0.2516], [0.1735, 0.0994]),
    cooler: prior(-1.4957, 0.6755, [0.4394, 0.4759], [0.1206, 0.1332]),
  },
};
