/** Air speeds of a desk fan at a person [m/s]: gentle, usual, and the most without papers flying. Common practice, no source. */
export const FAN_SPEEDS_MPS = [0.3, 0.5, 0.8] as const;

/** Electrical power of desk and floor fans and ventilated cushions as measured [W]. */
export const FAN_POWER_W = {
  low: 3.3,
  high: 29.9,
  source: "Building and Environment 217, 109069 (abstract of a comparison of personal comfort devices)",
} as const;
