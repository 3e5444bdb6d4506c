import { type Rhythm, rhythmOf } from "./gaps";

/** Numbers kept over all points of a file, in case its parts overlap in time [16 MB]. */
const MOST_KEPT = 2_000_000;
/** Different steps told apart. A log with more of them and no usual one has no rhythm, and its steps are forgotten. */
const MOST_STEPS = 1000;
/** Gaps of one length that are remembered by their place. */
const MOST_PLACES = 500;

/** How many numbers are kept so far of the instants of a file; shared by all its tallies. */
export type InstantBudget = { kept: number };

type Step = { count: number; places: number[] };

/**
 * The instants of a point's rows (or of the rows that many points share) over the parts of a file: the steps between
 * them by length, which is all that the rhythm and the gaps need. Parts that overlap in time, as of a file that is not
 * in order, are sorted out from the instants themselves, as far as those could be kept.
 */
export class InstantTally {
  first = Number.POSITIVE_INFINITY;
  last = Number.NEGATIVE_INFINITY;
  private count = 0;
  private steps = new Map<number, Step>();
  /** Steps that were not told apart. */
  private others = 0;
  private isIrregular = false;
  /** All instants by stretches of one step: the first, the step, how many follow. Null when there are too many. */
  private stretches: number[] | null = [];
  private tangled = false;
  /** Numbers in `stretches` that the budget knows of. */
  private counted = 0;

  constructor(private readonly budget: InstantBudget) {}

  copy(): InstantTally {
    const other = new InstantTally(this.budget);
    other.first = this.first;
    other.last = this.last;
    other.count = this.count;
    other.others = this.others;
    other.isIrregular = this.isIrregular;
    other.tangled = this.tangled;
    other.stretches = this.stretches && [...this.stretches];
    other.steps = new Map(
      [...this.steps].map(([length, { count, places }]) => [length, { count, places: [...places] }]),
    );
    return other;
  }

  /** Adds instants that ascend without repeats [UTC seconds]. */
  add(instants: Float64Array): void {
    const n = instants.length;
    if (n === 0) return;
    const [from, to] = [instants[0] as number, instants[n - 1] as number];
    if (this.count > 0) {
      if (from > this.last) this.countSteps(this.last, from - this.last, 1);
      else if (to < this.first) this.countSteps(to, this.first - to, 1);
      else this.tangled = true;
    }
    this.stepsWithin(instants, this.stretches);
    this.giveUpBeyondBudget();
    this.count += n;
    this.first = Math.min(this.first, from);
    this.last = Math.max(this.last, to);
  }

  /** True when parts overlap in time and their instants could not all be kept: the rhythm is then that of the parts. */
  get isRough(): boolean {
    return this.tangled && this.stretches === null;
  }

  rhythm(): Rhythm {
    this.untangle();
    if (this.isIrregular) return { sampling: "change-of-value", stepSeconds: null };
    return this.rhythmSoFar();
  }

  /** Steps over 1.5 times the usual one: places of those that are remembered, and how many there are of each length. */
  gaps(stepSeconds: number): { length: number; count: number; places: readonly number[] }[] {
    this.untangle();
    return [...this.steps]
      .filter(([length]) => length > 1.5 * stepSeconds)
      .map(([length, { count, places }]) => ({ length, count, places: [...places] }));
  }

  private rhythmSoFar(): Rhythm {
    return rhythmOf({ steps: this.lengths(), others: this.others });
  }

  private lengths(): Map<number, number> {
    return new Map([...this.steps].map(([length, { count }]) => [length, count]));
  }

  private stepsWithin(instants: Float64Array, stretches: number[] | null): void {
    // Most steps of a log are alike: a run of them is counted at once.
    const n = instants.length;
    if (n === 1) stretches?.push(instants[0] as number, 0, 0);
    for (let i = 1; i < n; ) {
      const before = instants[i - 1] as number;
      const length = (instants[i] as number) - before;
      let end = i + 1;
      while (end < n && (instants[end] as number) - (instants[end - 1] as number) === length) end++;
      stretches?.push(before, length, end - i);
      this.countSteps(before, length, end - i);
      i = end;
    }
  }

  private countSteps(from: number, length: number, count: number): void {
    const step = this.stepOf(length);
    if (step === null) {
      this.others += count;
      return;
    }
    step.count += count;
    for (let i = 0; i < count && step.places.length < MOST_PLACES; i++) step.places.push(from + i * length);
  }

  private stepOf(length: number): Step | null {
    let step = this.steps.get(length);
    if (!step) {
      if (this.isIrregular) return null;
      if (this.steps.size >= MOST_STEPS) {
        if (this.rhythmSoFar().sampling === "change-of-value") {
          this.isIrregular = true;
          this.steps.clear();
        }
        return null;
      }
      step = { count: 0, places: [] };
      this.steps.set(length, step);
    }
    return step;
  }

  private giveUpBeyondBudget(): void {
    if (this.stretches === null) return;
    const { length } = this.stretches;
    this.budget.kept += length - this.counted;
    this.counted = length;
    if (this.budget.kept <= MOST_KEPT) return;
    this.budget.kept -= length;
    this.stretches = null;
  }

  /** Counts the steps again over all instants in order of time. */
  private untangle(): void {
    if (!this.tangled || this.stretches === null) return;
    const all = instantsOf(this.stretches);
    all.sort();
    let kept = 0;
    for (let i = 0; i < all.length; i++) if (i === 0 || all[i] !== all[kept - 1]) all[kept++] = all[i] as number;
    this.steps = new Map();
    this.others = 0;
    this.isIrregular = false;
    this.stretches = [];
    this.stepsWithin(all.subarray(0, kept), this.stretches);
    this.tangled = false;
    this.giveUpBeyondBudget();
  }
}

/** The instants of stretches; the end of one and the beginning of the next may be the same. */
function instantsOf(stretches: readonly number[]): Float64Array {
  let count = 0;
  for (let k = 2; k < stretches.length; k += 3) count += (stretches[k] as number) + 1;
  const all = new Float64Array(count);
  let at = 0;
  for (let k = 0; k < stretches.length; k += 3) {
    const [from, step, more] = [stretches[k] as number, stretches[k + 1] as number, stretches[k + 2] as number];
    for (let i = 0; i <= more; i++) all[at++] = from + i * step;
  }
  return all;
}
