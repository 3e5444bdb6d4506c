/** Share of people dissatisfied [%] at a predicted mean vote: at least 5, alike on both sides. ISO 7730:2005, equation 5. */
export const predictedPercentDissatisfied = (pmv: number): number =>
  100 - 95 * Math.exp(-0.03353 * pmv ** 4 - 0.2179 * pmv ** 2);
