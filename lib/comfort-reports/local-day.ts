const DAY_MS = 86_400_000;

/** Number of the local day that a moment falls on, counted from 1970-01-01. */
export const localDayOf = (atMs: number, offsetMsAt: (atMs: number) => number): number =>
  Math.floor((atMs + offsetMsAt(atMs)) / DAY_MS);
