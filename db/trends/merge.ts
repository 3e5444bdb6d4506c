import type { Samples } from "./chunk-format";
import { rescale } from "./rescale";
import { SampleRoom } from "./sample-room";

/**
 * How incoming samples compare with those that stood: at new times, with other values, with the same. Those that met
 * a time which their own write had given before count in `repeated` instead. All five add up to the incoming samples.
 */
export type MergeCounts = {
  added: number;
  changed: number;
  same: number;
  repeated: { same: number; changed: number };
};
export type Merge = MergeCounts & { merged: Samples | null };

/**
 * Lays new samples over those of a chunk: where both have a time, the new value stands. Both ascend without equal
 * times. `given` tells of a sample of the chunk whether the same write gave it. `merged` is null when nothing changes,
 * however many decimals the new samples come with; else it has the larger number of decimals of the two, and lies in
 * `room` or is `incoming` itself.
 */
export function mergeSamples(
  before: Samples | null,
  incoming: Samples,
  given: ((index: number) => boolean) | null = null,
  room = new SampleRoom(),
): Merge {
  if (before === null)
    return { added: incoming.ts.length, changed: 0, same: 0, repeated: { same: 0, changed: 0 }, merged: incoming };
  const decimals = Math.max(before.decimals, incoming.decimals);
  const old = rescale(before, decimals);
  const add = rescale(incoming, decimals);

  if ((add.ts[0] as number) > (old.ts[old.ts.length - 1] as number)) {
    const counts = { added: add.ts.length, changed: 0, same: 0, repeated: { same: 0, changed: 0 } };
    return { ...counts, merged: append(old, add, room.take(old.ts.length + add.ts.length)) };
  }
  const counts = countOverlap(old, add, given);
  if (counts.added + counts.changed + counts.repeated.changed === 0) return { ...counts, merged: null };
  return { ...counts, merged: layOver(old, add, room.take(old.ts.length + counts.added)) };
}

/** The usual case of a log that goes on. */
function append(old: Samples, add: Samples, { ts, v }: { ts: Float64Array; v: Int32Array }): Samples {
  ts.set(old.ts);
  ts.set(add.ts, old.ts.length);
  v.set(old.v);
  v.set(add.v, old.v.length);
  return { ts, v, decimals: old.decimals };
}

function countOverlap(
  { ts: oldTs, v: oldV }: Samples,
  { ts: addTs, v: addV }: Samples,
  given: ((index: number) => boolean) | null,
): MergeCounts {
  const repeated = { same: 0, changed: 0 };
  let changed = 0;
  let same = 0;
  let i = 0;
  const count = oldTs.length;
  for (let j = 0; j < addTs.length; j++) {
    const time = addTs[j] as number;
    while (i < count && (oldTs[i] as number) < time) i++;
    if (i === count) break;
    if (oldTs[i] !== time) continue;
    const equal = oldV[i] === addV[j];
    if (given?.(i)) repeated[equal ? "same" : "changed"]++;
    else if (equal) same++;
    else changed++;
  }
  return { added: addTs.length - changed - same - repeated.same - repeated.changed, changed, same, repeated };
}

function layOver(old: Samples, add: Samples, { ts, v }: { ts: Float64Array; v: Int32Array }): Samples {
  let i = 0;
  let j = 0;
  for (let k = 0; k < ts.length; k++) {
    const oldTime = i < old.ts.length ? (old.ts[i] as number) : Number.POSITIVE_INFINITY;
    const addTime = j < add.ts.length ? (add.ts[j] as number) : Number.POSITIVE_INFINITY;
    if (addTime <= oldTime) {
      ts[k] = addTime;
      v[k] = add.v[j++] as number;
      if (addTime === oldTime) i++;
    } else {
      ts[k] = oldTime;
      v[k] = old.v[i++] as number;
    }
  }
  return { ts, v, decimals: old.decimals };
}
