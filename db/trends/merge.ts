import type { Samples } from "./chunk-format";
import { rescale } from "./rescale";

export type MergeCounts = { added: number; changed: number; same: number };

/**
 * Lays new samples over those of a chunk: where both have a time, the new value stands. Both ascend without equal
 * times. `merged` is null when nothing changes, however many decimals the new samples come with; else it has the
 * larger number of decimals of the two.
 */
export function mergeSamples(before: Samples | null, incoming: Samples): MergeCounts & { merged: Samples | null } {
  if (before === null) return { added: incoming.ts.length, changed: 0, same: 0, merged: incoming };
  const decimals = Math.max(before.decimals, incoming.decimals);
  const old = rescale(before, decimals);
  const add = rescale(incoming, decimals);

  const counts = countOverlap(old, add);
  if (counts.added === 0 && counts.changed === 0) return { ...counts, merged: null };
  return { ...counts, merged: layOver(old, add, old.ts.length + counts.added) };
}

function countOverlap(old: Samples, add: Samples): MergeCounts {
  let [changed, same, i] = [0, 0, 0];
  for (let j = 0; j < add.ts.length; j++) {
    const time = add.ts[j] as number;
    while (i < old.ts.length && (old.ts[i] as number) < time) i++;
    if (i === old.ts.length) break;
    if (old.ts[i] !== time) continue;
    if (old.v[i] === add.v[j]) same++;
    else changed++;
  }
  return { added: add.ts.length - changed - same, changed, same };
}

function layOver(old: Samples, add: Samples, count: number): Samples {
  const ts = new Float64Array(count);
  const v = new Int32Array(count);
  let [i, j] = [0, 0];
  for (let k = 0; k < count; k++) {
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
