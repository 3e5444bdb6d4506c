/** Waits after failures in a row: a minute, doubled to six hours at most [ms]. */
const FIRST_WAIT_MS = 60_000;
const LONGEST_WAIT_MS = 6 * 3_600_000;

/** Wait before the next try after so many failures in a row [ms]. */
export const waitAfterMs = (failures: number): number => Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - 1));

/** After so many failures in a row, some fourteen hours, a mail is given up and shown as failed. Judgement, no source. */
export const MOST_TRIES = 10;
