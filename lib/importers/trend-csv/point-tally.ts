import type { InstantTally } from "./instant-tally";
import type { LineList } from "./line-list";
import type { OrderedPoint } from "./order-points";
import { noticeLists, POINT_NOTICES, type PointDraft, type PointNotice } from "./point-draft";

/** Values kept of a point without a unit, from which one is proposed. */
const MOST_VALUES = 2000;
/** Readings remembered between the first and the last, at most. */
const MOST_SPOTS = 64;
/** Where they stand in a part. */
const SPOT_SHARES = [0.2, 0.4, 0.6, 0.8] as const;

type Value = number | string;
type Spot = { ts: number; value: Value };

/** One point over the parts of its file: counts, ends and notices, not the readings themselves. */
export class PointTally {
  readings = 0;
  sum = 0;
  first: Spot | null = null;
  last: Spot | null = null;
  readonly states = new Set<string>();
  readonly lists: Record<PointNotice, LineList> = noticeLists();
  readonly oddValues: PointDraft["oddValues"] = { "sentinel-value": new Set(), "implausible-value": new Set() };
  readonly sample: number[] = [];
  spots: Spot[] = [];
  /** Every so many parts give spots. */
  private spotStride = 1;
  private parts = 0;
  instants: InstantTally | null = null;

  constructor(
    /** As it is known in the file: with the number of its table where two of a name overlap. */
    readonly name: string,
    readonly draft: PointDraft,
  ) {}

  /** Whether later cells of the same column were taken for something else: then the whole has to be read anew. */
  disagreesWith({ kind, unitAsWritten, unit, sparse }: PointDraft): boolean {
    const own = this.draft;
    return own.kind !== kind || own.unitAsWritten !== unitAsWritten || own.unit !== unit || own.sparse !== sparse;
  }

  /** Whether readings of a draft lie between the first and the last so far. */
  overlaps(draft: PointDraft): boolean {
    const other = extentOf(draft);
    return this.first !== null && this.last !== null && other !== null
      ? this.first.ts < other.to && other.from < this.last.ts
      : false;
  }

  addNotices({ lists, oddValues }: PointDraft): void {
    for (const notice of POINT_NOTICES) this.lists[notice].addAll(lists[notice]);
    for (const code of ["sentinel-value", "implausible-value"] as const)
      for (const value of oddValues[code]) if (this.oddValues[code].size < 6) this.oddValues[code].add(value);
  }

  /** `sum` of the values, where it is known already. */
  addReadings(readings: OrderedPoint, sum = Number.NaN): void {
    const { ts, values, stateNames } = readings;
    const n = ts.length;
    if (n === 0) return;
    const [first, last] = [spotAt(readings, 0), spotAt(readings, n - 1)];
    if (!this.first || first.ts < this.first.ts) this.first = first;
    // Of one instant twice the later row stands.
    if (!this.last || last.ts >= this.last.ts) this.last = last;
    this.readings += n;
    for (const name of stateNames ?? []) this.states.add(name);
    if (!stateNames) this.sum += Number.isNaN(sum) ? sumOf(values) : sum;
    if (this.draft.unitAsWritten === null && !stateNames && this.sample.length < MOST_VALUES) {
      const stride = Math.max(1, Math.floor(n / MOST_VALUES));
      for (let i = 0; i < n && this.sample.length < MOST_VALUES; i += stride) this.sample.push(values[i] as number);
    }
    if (this.parts++ % this.spotStride > 0) return;
    for (const share of SPOT_SHARES) {
      const i = Math.round(share * (n - 1));
      if (i > 0 && i < n - 1) this.spots.push(spotAt(readings, i));
    }
    if (this.spots.length <= MOST_SPOTS) return;
    this.spots = this.spots.filter((_, i) => i % 2 === 0);
    this.spotStride *= 2;
  }
}

const spotAt = ({ ts, values, stateNames }: OrderedPoint, i: number): Spot => ({
  ts: ts[i] as number,
  value: stateNames ? (stateNames[values[i] as number] as string) : (values[i] as number),
});

export function draftsOverlap(a: PointDraft, b: PointDraft): boolean {
  const [first, second] = [extentOf(a), extentOf(b)];
  return first !== null && second !== null && first.from < second.to && second.from < first.to;
}

function extentOf({ chunks }: PointDraft): { from: number; to: number } | null {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const { ts } of chunks) {
    for (const instant of ts) {
      from = Math.min(from, instant);
      to = Math.max(to, instant);
    }
  }
  return from <= to ? { from, to } : null;
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] as number;
  return sum;
}
