import { type Rhythm, rhythmOf } from "./gaps";

/** Instants kept whole over all points of a file, in case its parts overlap in time: 12 million, 48 MB. */
const MOST_KEPT = 12_000_000;
/** Different steps told apart. A log with more of them and no usual one has no rhythm, and its steps are forgotten. */
const MOST_STEPS = 1000;
/** Gaps of one length that are remembered by their place. */
const MOST_PLACES = 500;

/** How many instants of a file are kept whole so far; shared by all its tallies. */
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
  private parts: Uint32Array[] | null = [];
  private tangled = false;

  constructor(private readonly budget: InstantBudget) {}

  copy(): InstantTally {
    const other = new InstantTally(this.budget);
    other.first = this.first;
    other.last = this.last;
    other.count = this.count;
    other.others = this.others;
    other.isIrregular = this.isIrregular;
    other.tangled = this.tangled;
    other.parts = this.parts && [...this.parts];
    other.steps = new Map(
      [...this.steps].map(([length, { count, places }]) => [length, { count, places: [...places] }]),
    );
    return other;
  }

  /** Adds instants that ascend without repeats [UTC seconds]. */
  add(instants: Float64Array): void {
    const n = instants.length;
    if (n === 0) return;
    this.keep(instants);
    const [from, to] = [instants[0] as number, instants[n - 1] as number];
    if (this.count > 0) {
      if (from > this.last) this.step(this.last, from);
      else if (to < this.first) this.step(to, this.first);
      else this.tangled = true;
    }
    this.stepsWithin(instants);
    this.count += n;
    this.first = Math.min(this.first, from);
    this.last = Math.max(this.last, to);
  }

  /** True when parts overlap in time and their instants could not all be kept: the rhythm is then that of the parts. */
  get isRough(): boolean {
    return this.tangled && this.parts === null;
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

  private stepsWithin(instants: Float64Array): void {
    // Most steps of a log are alike: a run of them is counted at once.
    let length = Number.NaN;
    let run: Step | null = null;
    for (let i = 1; i < instants.length; i++) {
      const from = instants[i - 1] as number;
      const step = (instants[i] as number) - from;
      if (step !== length || run === null) {
        length = step;
        run = this.stepOf(step);
      }
      if (run === null) this.others++;
      else {
        run.count++;
        if (run.places.length < MOST_PLACES) run.places.push(from);
      }
    }
  }

  private step(from: number, to: number): void {
    const step = this.stepOf(to - from);
    if (step === null) {
      this.others++;
      return;
    }
    step.count++;
    if (step.places.length < MOST_PLACES) step.places.push(from);
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

  private keep(instants: Float64Array): void {
    if (this.parts === null) return;
    if (this.budget.kept + instants.length > MOST_KEPT) {
      this.budget.kept -= this.parts.reduce((sum, part) => sum + part.length, 0);
      this.parts = null;
      return;
    }
    this.budget.kept += instants.length;
    const kept = new Uint32Array(instants.length);
    kept.set(instants);
    this.parts.push(kept);
  }

  /** Counts the steps again over all instants in order of time. */
  private untangle(): void {
    if (!this.tangled || this.parts === null) return;
    const all = new Float64Array(this.parts.reduce((sum, part) => sum + part.length, 0));
    let at = 0;
    for (const part of this.parts) {
      all.set(part, at);
      at += part.length;
    }
    all.sort();
    let kept = 0;
    for (let i = 0; i < all.length; i++) if (i === 0 || all[i] !== all[kept - 1]) all[kept++] = all[i] as number;
    this.steps = new Map();
    this.others = 0;
    this.isIrregular = false;
    this.stepsWithin(all.subarray(0, kept));
    this.tangled = false;
    this.parts = [];
  }
}
