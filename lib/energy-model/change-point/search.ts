import type { SortedSums, WingedFit } from "./sorted-sums";

/**
 * Searches for the change points of least squared error. The error as a function of the change points has kinks at
 * the readings and several local minima, so a descent can stop in the wrong one (Guideline 14 and RP-1050 search a
 * grid for that reason). Here the grid is the gaps between neighbouring temperatures, and within a gap the best
 * change point is known in closed form:
 *
 * - inside the gap it is where separate fits of the parts meet, if they meet there;
 * - else it is one of the temperatures that bound the gap.
 *
 * So the optimum over all real change points is found, not over a grid. Separate fits of the parts are at the same
 * time a lower bound on the error of a whole range of gaps, which is how most gaps are passed over.
 */

/** Temperatures that a sloping part must hold: a line through fewer fits whatever is there. */
export const LEAST_IN_WING = 2;

/** 3PC and 3PH: flat on one side of the change point. Null with fewer than three distinct temperatures. */
export function searchOneWing(sums: SortedSums, side: "heating" | "cooling"): WingedFit | null {
  const { x, count } = sums;
  const last = count - 1;
  let best: WingedFit | null = null;
  const keep = (fit: WingedFit): void => {
    if (best === null || fit.sse < best.sse) best = fit;
  };
  const [first, end] = side === "cooling" ? [0, last - LEAST_IN_WING] : [LEAST_IN_WING - 1, last - 1];
  for (let i = first; i <= end; i++) {
    const wing = side === "cooling" ? sums.line(i + 1, last) : sums.line(0, i);
    const flat = side === "cooling" ? sums.flatSse(0, i) : sums.flatSse(i + 1, last);
    if (best !== null && wing.sse + flat >= (best as WingedFit).sse) continue;
    const level = side === "cooling" ? sums.flatLevel(0, i) : sums.flatLevel(i + 1, last);
    const at = crossing(level, wing, x[i] as number, x[i + 1] as number);
    if (at !== null) keep(oneWing(side, level, wing.slope, at, wing.sse + flat));
    for (const k of [i, i + 1]) keep(wingAt(sums, side, k));
  }
  return best;
}

/** 4P: two lines that meet at the change point. Null with fewer than four distinct temperatures. */
export function searchTwoLines(sums: SortedSums): WingedFit | null {
  const { x, count } = sums;
  const last = count - 1;
  let best: WingedFit | null = null;
  const keep = (fit: WingedFit): void => {
    if (best === null || fit.sse < best.sse) best = fit;
  };
  for (let i = LEAST_IN_WING - 1; i <= last - LEAST_IN_WING; i++) {
    const left = sums.line(0, i);
    const right = sums.line(i + 1, last);
    if (best !== null && left.sse + right.sse >= (best as WingedFit).sse) continue;
    const at = (left.level - right.level) / (right.slope - left.slope);
    if (at >= (x[i] as number) && at <= (x[i + 1] as number)) {
      const level = left.level + left.slope * at;
      keep({ level, left: -left.slope, right: right.slope, a: at, b: at, sse: left.sse + right.sse });
    }
    for (const k of [i, i + 1]) keep(sums.wingedAt(k, k));
  }
  return best;
}

function wingAt(sums: SortedSums, side: "heating" | "cooling", k: number): WingedFit {
  const last = sums.count - 1;
  const at = sums.x[k] as number;
  const none = side === "cooling" ? { leftTo: -1, rightFrom: k + 1 } : { leftTo: k - 1, rightFrom: last + 1 };
  return sums.winged({ from: 0, to: last, a: at, b: at, ...none });
}

const oneWing = (side: "heating" | "cooling", level: number, slope: number, at: number, sse: number): WingedFit =>
  side === "cooling"
    ? { level, left: 0, right: slope, a: at, b: at, sse }
    : { level, left: -slope, right: 0, a: at, b: at, sse };

/** Where a line meets a level, if it does so between two temperatures. */
export function crossing(
  level: number,
  line: { level: number; slope: number },
  from: number,
  to: number,
): number | null {
  const at = (level - line.level) / line.slope;
  return at >= from && at <= to ? at : null;
}
