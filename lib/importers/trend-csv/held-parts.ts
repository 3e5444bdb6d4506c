import {
  areWhole,
  type PackedInstants,
  type PackedSelection,
  type PackedValues,
  packInstants,
  packSelection,
  packValues,
  packWritten,
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
  point: Omit<PartPoint, "tsUtcSeconds" | "values" | "among" | "whole" | "written">;
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

  /**
   * Hands the readings out once, a point at a time with all its parts in their order, and forgets them. Whoever packs
   * them by point has each whole, and no more than one at hand.
   */
  async *replay(result: TrendFileResult): AsyncGenerator<TrendPart, TrendFileResult> {
    const { parts, scratch } = this;
    this.drop();
    const byName = groupByName(parts);
    let given = 0;
    for (const held of byName.values()) {
      // How far the reading had come stands for how many points are handed out.
      const { progress } = parts[Math.floor((given * parts.length) / byName.size)] as HeldPart;
      yield { points: unpack(held, scratch), progress, isFirst: given === 0 };
      given++;
    }
    return result;
  }

  private pack(points: readonly PartPoint[]): Pick<HeldPart, "instants" | "points"> {
    const { slabs, scratch } = this;
    const places = new Map<Float64Array, number>();
    const instants: PackedInstants[] = [];
    const packed = points.map(({ tsUtcSeconds, values, among = tsUtcSeconds, written, ...point }): HeldPoint => {
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
        values: (written && packWritten(values, written, slabs)) ?? packValues(values, slabs, scratch),
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

type PlacedPoint = { held: HeldPoint; instants: PackedInstants };

function groupByName(parts: readonly HeldPart[]): Map<string, PlacedPoint[]> {
  const byName = new Map<string, PlacedPoint[]>();
  for (const { instants, points } of parts) {
    for (const held of points) {
      const placed = { held, instants: instants[held.among] as PackedInstants };
      const others = byName.get(held.point.name);
      if (others) others.push(placed);
      else byName.set(held.point.name, [placed]);
    }
  }
  return byName;
}

/** One point with its readings of all parts, in arrays that are used again for the next point. */
function unpack(placed: readonly PlacedPoint[], scratch: Scratch): PartPoint[] {
  // What numbers stand for is the same in all parts; those of states count the states of their part.
  const groups = placed[0]?.held.point.kind === "numeric" ? [placed] : placed.map((each) => [each]);
  const count = placed.reduce((total, { held }) => total + held.count, 0);
  const times = scratch.float64("times", count);
  let at = 0;
  return groups.map((group): PartPoint => {
    const from = at;
    for (const { held, instants } of group) {
      const own = times.subarray(at, at + held.count);
      if (held.selection) unpackSelection(held.selection, instants, own);
      else for (let i = 0; i < own.length; i++) own[i] = instants[i] as number;
      at += held.count;
    }
    return pointOf(group, times.subarray(from, at));
  });
}

/** A point whose values are worked out when they are asked for: whoever takes them as whole numbers never does. */
function pointOf(group: readonly PlacedPoint[], tsUtcSeconds: Float64Array): PartPoint {
  const { point } = (group[0] as PlacedPoint).held;
  const packs = group.map(({ held }) => held.values);
  const isWhole = point.kind === "numeric" && areWhole(packs);
  return {
    ...point,
    tsUtcSeconds,
    ...(isWhole ? { whole: packs } : {}),
    get values() {
      const values = new Float64Array(tsUtcSeconds.length);
      unpackValues(packs, values);
      return values;
    },
  };
}
