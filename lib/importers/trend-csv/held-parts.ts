import {
  type PackedInstants,
  type PackedSelection,
  type PackedValues,
  packInstants,
  packSelection,
  packValues,
  unpackSelection,
  unpackValues,
} from "./packed-readings";
import { Scratch } from "./scratch";
import { Slabs } from "./slabs";
import type { PartPoint, ReadProgress, TrendFileResult, TrendPart } from "./trend-file";

/** Readings that are held at most [bytes]: a year of some hundred points. */
const MOST_BYTES = 32_000_000;

/** Readings of a point: its instants are a selection (null for all) of those that stand at `among` in its part's list. */
type HeldPoint = {
  point: Omit<PartPoint, "tsUtcSeconds" | "values" | "among">;
  count: number;
  among: number;
  selection: PackedSelection | null;
  values: PackedValues;
};
type HeldPart = { instants: PackedInstants[]; points: HeldPoint[]; progress: ReadProgress };

/**
 * The parts of a file as its inspection read them, packed, so that an import that follows at once needs no second
 * reading. A file with more readings than are held is read again.
 */
export class HeldParts {
  private parts: HeldPart[] = [];
  private slabs = new Slabs();
  private readonly scratch = new Scratch();
  private isOverfull = false;

  add({ points, progress, isFirst }: TrendPart): void {
    if (isFirst) this.drop();
    if (this.isOverfull) return;
    this.parts.push({ ...this.pack(points), progress });
    if (this.slabs.bytes > MOST_BYTES) {
      this.drop();
      this.isOverfull = true;
    }
  }

  get isWhole(): boolean {
    return !this.isOverfull && this.parts.length > 0;
  }

  /** Hands the parts out once, as `readTrendParts` would, and forgets each. */
  async *replay(result: TrendFileResult): AsyncGenerator<TrendPart, TrendFileResult> {
    let isFirst = true;
    for (let part = this.parts.shift(); part; part = this.parts.shift()) {
      yield { points: unpack(part, this.scratch), progress: part.progress, isFirst };
      isFirst = false;
    }
    this.drop();
    return result;
  }

  private pack(points: readonly PartPoint[]): Pick<HeldPart, "instants" | "points"> {
    const { slabs, scratch } = this;
    const places = new Map<Float64Array, number>();
    const instants: PackedInstants[] = [];
    const packed = points.map(({ tsUtcSeconds, values, among = tsUtcSeconds, ...point }): HeldPoint => {
      let place = places.get(among);
      if (place === undefined) {
        place = instants.push(packInstants(among, slabs)) - 1;
        places.set(among, place);
      }
      return {
        point,
        count: values.length,
        among: place,
        selection: packSelection(tsUtcSeconds, among, slabs, scratch),
        values: packValues(values, slabs, scratch),
      };
    });
    return { instants, points: packed };
  }

  private drop(): void {
    this.parts = [];
    this.slabs = new Slabs();
    this.isOverfull = false;
  }
}

/** Points with their readings, in arrays that are used again for the next part. */
function unpack({ instants, points }: HeldPart, scratch: Scratch): PartPoint[] {
  const sum = (lengths: readonly number[]) => lengths.reduce((total, length) => total + length, 0);
  const shared = scratch.float64("shared times", sum(instants.map(({ length }) => length)));
  let sharedAt = 0;
  const amongs = instants.map((packed) => {
    const own = shared.subarray(sharedAt, sharedAt + packed.length);
    for (let i = 0; i < packed.length; i++) own[i] = packed[i] as number;
    sharedAt += packed.length;
    return own;
  });
  const count = sum(points.map((point) => point.count));
  const room = { times: scratch.float64("own times", count), values: scratch.float64("values", count) };
  let at = 0;
  return points.map((held): PartPoint => {
    const among = amongs[held.among] as Float64Array;
    const values = room.values.subarray(at, at + held.count);
    unpackValues(held.values, values);
    let tsUtcSeconds = among;
    if (held.selection) {
      tsUtcSeconds = room.times.subarray(at, at + held.count);
      unpackSelection(held.selection, among, tsUtcSeconds);
    }
    at += held.count;
    return { ...held.point, tsUtcSeconds, values, among };
  });
}
