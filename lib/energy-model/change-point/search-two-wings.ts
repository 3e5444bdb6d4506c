import { crossing, LEAST_IN_WING } from "./search";
import type { SortedSums, WingedFit } from "./sorted-sums";

/** A fit that is better by less than this share of the error is the same fit. */
const SAME = 1e-12;

/** Distinct temperatures up to which every pair of gaps is looked at: three years of days, and bills of any number. */
const MOST_LOOKED_THROUGH = 1200;

/** With more of them, as many temperatures are the coarse grid, and as many of its best pairs are looked into. */
const COARSE = 240;
const LOOKED_INTO = 12;

/**
 * 5P: two wings and a flat part of at least one temperature between them. Ranges of pairs of gaps are halved until
 * their lower bound says that they hold nothing better, so that the optimum is proven. With more than 1,200 distinct
 * temperatures (hours whose temperatures are interpolated) that would take seconds where there is no slope to be found:
 * then a grid of 240 of them comes first, and ranges of the grid's step around its twelve best pairs are searched so.
 * Null with fewer than five distinct temperatures.
 */
export function searchTwoWings(sums: SortedSums): WingedFit | null {
  const lowest = LEAST_IN_WING - 1;
  const highest = sums.count - 1 - LEAST_IN_WING;
  if (highest <= lowest) return null;
  const search = new PairSearch(sums, lowest, highest);
  if (sums.count <= MOST_LOOKED_THROUGH) {
    search.start(12);
    search.within(lowest, highest - 1, lowest + 1, highest);
  } else {
    const step = Math.ceil((highest - lowest) / COARSE);
    for (const { p, q } of search.start(COARSE)) {
      search.within(
        Math.max(lowest, p - step),
        Math.min(highest - 1, p + step),
        Math.max(lowest + 1, q - step),
        Math.min(highest, q + step),
      );
    }
  }
  return search.best;
}

/** The best pair so far, and the search of ranges for a better one. Gap k follows temperature k. */
class PairSearch {
  best: WingedFit | null = null;
  private bestSse = Number.POSITIVE_INFINITY;
  private readonly leftSse: Float64Array;
  private readonly rightSse: Float64Array;
  private readonly open = new BoxStack();

  constructor(
    private readonly sums: SortedSums,
    private readonly lowest: number,
    private readonly highest: number,
  ) {
    const last = sums.count - 1;
    this.leftSse = new Float64Array(sums.count).map((_, i) => sums.line(0, i).sse);
    this.rightSse = new Float64Array(sums.count).map((_, i) => sums.line(i, last).sse);
  }

  /** Tries pairs of temperatures spread evenly; gives back the best of them. */
  start(steps: number): { p: number; q: number }[] {
    const { sums, lowest, highest } = this;
    const nodes = Array.from({ length: steps + 1 }, (_, k) => lowest + Math.round(((highest - lowest) * k) / steps));
    const found: { p: number; q: number; sse: number }[] = [];
    let worst = Number.POSITIVE_INFINITY;
    for (const [i, p] of nodes.entries())
      for (let j = i; j < nodes.length; j++) {
        const q = nodes[j] as number;
        const sse = sums.cornerSse(p, q);
        if (!(sse < worst)) continue;
        found.push({ p, q, sse });
        if (found.length < 4 * LOOKED_INTO) continue;
        found.sort((one, other) => one.sse - other.sse);
        found.length = LOOKED_INTO;
        worst = found[LOOKED_INTO - 1]?.sse ?? worst;
      }
    found.sort((one, other) => one.sse - other.sse);
    const [first] = found;
    if (first) this.keep(sums.wingedAt(first.p, first.q));
    return found.slice(0, LOOKED_INTO);
  }

  /** Looks through all pairs of gaps i0 to i1 and j0 to j1 for one that is better than the best so far. */
  within(fromI: number, toI: number, fromJ: number, toJ: number): void {
    const { open } = this;
    open.push(fromI, toI, fromJ, toJ, 0);
    while (open.pop()) {
      const { i0, i1, j0, j1 } = open;
      if (open.bound >= this.bestSse * (1 - SAME)) continue;
      if (i0 === i1 && j0 === j1) this.cell(i0, j0);
      else if (i1 - i0 >= j1 - j0) this.halve(i0, (i0 + i1) >> 1, i1, j0, j1);
      else this.halveOther(i0, i1, j0, (j0 + j1) >> 1, j1);
    }
  }

  /** What is pushed last is looked at first: the better half, so that what it finds passes over more of the other. */
  private halve(i0: number, middle: number, i1: number, j0: number, j1: number): void {
    const [low, high] = [this.bound(i0, middle, j0, j1), this.bound(middle + 1, i1, j0, j1)];
    if (low < high) this.add(middle + 1, i1, j0, j1, high);
    this.add(i0, middle, j0, j1, low);
    if (low >= high) this.add(middle + 1, i1, j0, j1, high);
  }

  private halveOther(i0: number, i1: number, j0: number, middle: number, j1: number): void {
    const [low, high] = [this.bound(i0, i1, j0, middle), this.bound(i0, i1, middle + 1, j1)];
    if (low < high) this.add(i0, i1, middle + 1, j1, high);
    this.add(i0, i1, j0, middle, low);
    if (low >= high) this.add(i0, i1, middle + 1, j1, high);
  }

  private add(i0: number, i1: number, j0: number, j1: number, bound: number): void {
    if (i0 < j1 && bound < this.bestSse) this.open.push(i0, i1, j0, j1, bound);
  }

  /** Separate fits of what is surely left, flat and right: no pair of the range has a smaller error. */
  private bound(i0: number, i1: number, j0: number, j1: number): number {
    return (this.leftSse[i0] as number) + this.sums.flatSse(i1 + 1, j0) + (this.rightSse[j1 + 1] as number);
  }

  /**
   * The best fit with the heating change point in gap i and the cooling one in gap j > i. Of the ends of the gaps only the
   * upper one of i and the lower one of j are tried: the others are ends of the neighbouring gaps, whose bounds are no
   * larger than the error there.
   */
  private cell(i: number, j: number): void {
    const { sums } = this;
    const { x, count } = sums;
    const last = count - 1;
    const left = sums.line(0, i);
    const right = sums.line(j + 1, last);
    const level = sums.flatLevel(i + 1, j);
    const a = crossing(level, left, x[i] as number, x[i + 1] as number);
    const b = crossing(level, right, x[j] as number, x[j + 1] as number);
    if (a !== null && b !== null) {
      const sse = left.sse + sums.flatSse(i + 1, j) + right.sse;
      if (sse < this.bestSse) this.keep({ level, left: -left.slope, right: right.slope, a, b, sse });
      return;
    }
    const ps = i === this.lowest ? [i, i + 1] : [i + 1];
    const qs = j === this.highest ? [j, j + 1] : [j];
    for (const q of qs) {
      const rest = sums.winged({ from: i + 1, to: last, a: 0, leftTo: i, b: x[q] as number, rightFrom: q + 1 });
      if (rest.sse + left.sse >= this.bestSse) continue;
      const at = crossing(rest.level, left, x[i] as number, x[i + 1] as number);
      if (at !== null) this.keep({ ...rest, left: -left.slope, a: at, sse: rest.sse + left.sse });
    }
    for (const p of ps) {
      const rest = sums.winged({ from: 0, to: j, a: x[p] as number, leftTo: p - 1, b: 0, rightFrom: j + 1 });
      if (rest.sse + right.sse < this.bestSse) {
        const at = crossing(rest.level, right, x[j] as number, x[j + 1] as number);
        if (at !== null) this.keep({ ...rest, right: right.slope, b: at, sse: rest.sse + right.sse });
      }
      for (const q of qs) if (sums.cornerSse(p, q) < this.bestSse) this.keep(sums.wingedAt(p, q));
    }
  }

  private keep(fit: WingedFit): void {
    this.best = fit;
    this.bestSse = fit.sse;
  }
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
