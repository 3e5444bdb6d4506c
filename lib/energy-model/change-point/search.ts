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
 * time a lower bound on the error of a whole range of gaps, which is how most pairs of gaps are passed over.
 */

/** Temperatures that a sloping part must hold: a line through fewer fits whatever is there. */
const LEAST_IN_WING = 2;

/** A fit that is better by less than this share of the error is the same fit. */
const SAME = 1e-12;

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
    for (const k of [i, i + 1]) keep(cornersAt(sums, k, k));
  }
  return best;
}

/**
 * 5P: two wings and a flat part of at least one temperature between them. Ranges of pairs of gaps are halved until
 * their lower bound says that they hold nothing better. Null with fewer than five distinct temperatures.
 */
export function searchTwoWings(sums: SortedSums): WingedFit | null {
  const last = sums.count - 1;
  const lowest = LEAST_IN_WING - 1;
  const highest = last - LEAST_IN_WING;
  if (highest <= lowest) return null;
  const leftSse = new Float64Array(sums.count).map((_, i) => sums.line(0, i).sse);
  const rightSse = new Float64Array(sums.count).map((_, i) => sums.line(i, last).sse);
  let best = firstGuess(sums, lowest, highest);
  const open = new BoxStack();
  const bound = (i0: number, i1: number, j0: number, j1: number): number =>
    (leftSse[i0] as number) + sums.flatSse(i1 + 1, j0) + (rightSse[j1 + 1] as number);
  open.push(lowest, highest - 1, lowest + 1, highest, 0);
  while (open.pop()) {
    const { i0, i1, j0, j1 } = open;
    if (open.bound >= best.sse * (1 - SAME)) continue;
    if (i0 === i1 && j0 === j1) {
      const found = bestOfCell(sums, i0, j0);
      if (found.sse < best.sse) best = found;
    } else if (i1 - i0 >= j1 - j0) {
      const middle = (i0 + i1) >> 1;
      const [low, high] = [bound(i0, middle, j0, j1), bound(middle + 1, i1, j0, j1)];
      // What is pushed last is looked at first: the better half, so that what it finds passes over more of the other.
      if (low < high && middle + 1 < j1) open.push(middle + 1, i1, j0, j1, high);
      if (i0 < j1) open.push(i0, middle, j0, j1, low);
      if (low >= high && middle + 1 < j1) open.push(middle + 1, i1, j0, j1, high);
    } else {
      const middle = (j0 + j1) >> 1;
      const [low, high] = [bound(i0, i1, j0, middle), bound(i0, i1, middle + 1, j1)];
      if (low < high && i0 < j1) open.push(i0, i1, middle + 1, j1, high);
      if (i0 < middle) open.push(i0, i1, j0, middle, low);
      if (low >= high && i0 < j1) open.push(i0, i1, middle + 1, j1, high);
    }
  }
  return best;
}

/**
 * Pairs of gaps still to be looked at: the heating change point in gaps i0 to i1, the cooling one in j0 to j1 (gap k
 * follows temperature k), with the lower bound of what they hold. Numbers in a row, since there may be millions.
 */
class BoxStack {
  i0 = 0;
  i1 = 0;
  j0 = 0;
  j1 = 0;
  bound = 0;
  private readonly numbers: number[] = [];
  private size = 0;

  push(i0: number, i1: number, j0: number, j1: number, bound: number): void {
    const { numbers, size } = this;
    numbers[size] = i0;
    numbers[size + 1] = i1;
    numbers[size + 2] = j0;
    numbers[size + 3] = j1;
    numbers[size + 4] = bound;
    this.size = size + 5;
  }

  /** Puts the last box into the fields; false when there is none. */
  pop(): boolean {
    if (this.size === 0) return false;
    this.size -= 5;
    const { numbers, size } = this;
    this.i0 = numbers[size] as number;
    this.i1 = numbers[size + 1] as number;
    this.j0 = numbers[size + 2] as number;
    this.j1 = numbers[size + 3] as number;
    this.bound = numbers[size + 4] as number;
    return true;
  }
}

/** The best of a few dozen pairs spread over the temperatures: somewhere to measure the bounds against. */
function firstGuess(sums: SortedSums, lowest: number, highest: number): WingedFit {
  const steps = 12;
  const nodes = Array.from({ length: steps + 1 }, (_, k) => lowest + Math.round(((highest - lowest) * k) / steps));
  let best: WingedFit | null = null;
  for (const i of nodes)
    for (const j of nodes) {
      if (j < i) continue;
      const fit = cornersAt(sums, i, j);
      if (best === null || fit.sse < best.sse) best = fit;
    }
  return best as WingedFit;
}

/** The best fit with the heating change point in gap i and the cooling one in gap j > i, ends of the gaps included. */
function bestOfCell(sums: SortedSums, i: number, j: number): WingedFit {
  const { x, count } = sums;
  const last = count - 1;
  const left = sums.line(0, i);
  const right = sums.line(j + 1, last);
  const level = sums.flatLevel(i + 1, j);
  const a = crossing(level, left, x[i] as number, x[i + 1] as number);
  const b = crossing(level, right, x[j] as number, x[j + 1] as number);
  if (a !== null && b !== null) {
    const sse = left.sse + sums.flatSse(i + 1, j) + right.sse;
    return { level, left: -left.slope, right: right.slope, a, b, sse };
  }
  const candidates: WingedFit[] = [];
  for (const q of [j, j + 1]) {
    const rest = sums.winged({ from: i + 1, to: last, a: 0, leftTo: i, b: x[q] as number, rightFrom: q + 1 });
    const at = crossing(rest.level, left, x[i] as number, x[i + 1] as number);
    if (at !== null) candidates.push({ ...rest, left: -left.slope, a: at, sse: rest.sse + left.sse });
  }
  for (const p of [i, i + 1]) {
    const rest = sums.winged({ from: 0, to: j, a: x[p] as number, leftTo: p - 1, b: 0, rightFrom: j + 1 });
    const at = crossing(rest.level, right, x[j] as number, x[j + 1] as number);
    if (at !== null) candidates.push({ ...rest, right: right.slope, b: at, sse: rest.sse + right.sse });
    for (const q of [j, j + 1]) candidates.push(cornersAt(sums, p, q));
  }
  return candidates.reduce((one, other) => (other.sse < one.sse ? other : one));
}

/** Both change points at temperatures: p for heating, q for cooling, p <= q. */
const cornersAt = (sums: SortedSums, p: number, q: number): WingedFit =>
  sums.winged({
    from: 0,
    to: sums.count - 1,
    a: sums.x[p] as number,
    leftTo: p - 1,
    b: sums.x[q] as number,
    rightFrom: q + 1,
  });

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
function crossing(level: number, line: { level: number; slope: number }, from: number, to: number): number | null {
  const at = (level - line.level) / line.slope;
  return at >= from && at <= to ? at : null;
}
