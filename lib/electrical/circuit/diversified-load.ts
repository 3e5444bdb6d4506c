/**
 * Load of heating and power in an office as a feeder sees it: the largest whole and 75 % of the rest (J. Whitfield, The
 * Electrician's Guide, 5th ed., table 6.2). For demand only; a branch circuit is judged without diversity.
 */
export function diversifiedLoad(currentsA: readonly number[]): { diversifiedA: number; diversityFactor: number } {
  const totalA = currentsA.reduce((sum, each) => sum + each, 0);
  if (totalA === 0) return { diversifiedA: 0, diversityFactor: 1 };
  const largestA = Math.max(...currentsA);
  const diversifiedA = largestA + 0.75 * (totalA - largestA);
  return { diversifiedA, diversityFactor: diversifiedA / totalA };
}
