/** A regular grid of instants: interval `i` covers `[start + i * step, start + (i + 1) * step)`, in UTC seconds. */
export type Grid = { startUtcSeconds: number; stepSeconds: number; count: number };

/** Step of the common grid: the coarsest that still counts as interval data for zone trends (reference Q8: <= 15 min). */
export const DEFAULT_STEP_SECONDS = 900;

/**
 * Grid that covers `[fromUtcSeconds, toUtcSeconds)` with edges at whole multiples of the step, so that the grids of
 * all points and zones of a building fall on each other. Empty when the span is empty.
 */
export function gridOver(span: { fromUtcSeconds: number; toUtcSeconds: number; stepSeconds?: number }): Grid {
  const stepSeconds = span.stepSeconds ?? DEFAULT_STEP_SECONDS;
  if (!(stepSeconds > 0)) throw new RangeError("the step of a grid must be above 0 s");
  const first = Math.floor(span.fromUtcSeconds / stepSeconds);
  const end = Math.ceil(span.toUtcSeconds / stepSeconds);
  return { startUtcSeconds: first * stepSeconds, stepSeconds, count: Math.max(0, end - first) };
}

/** Hours that one interval of a grid stands for. */
export const stepHours = (grid: Grid): number => grid.stepSeconds / 3600;
