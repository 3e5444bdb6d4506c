import type { Samples } from "./chunk-format";
import type { Merge } from "./merge";

/** Stands for a chunk of which a write has given every sample. */
const ALL = new Uint8Array(0);

/**
 * Which samples of the stored chunks a write has given itself, so that a time that comes twice within one write is told
 * from one that stood there before. In the usual case one mark a chunk; a bit a sample where a chunk is given in part.
 */
export class Touched {
  private readonly byChunk = new Map<number, Uint8Array>();

  /** Tells of a chunk's sample, by its index, whether the write gave it; null when it gave none of them. */
  given(chunkId: number): ((index: number) => boolean) | null {
    const bits = this.byChunk.get(chunkId);
    if (bits === undefined) return null;
    return bits === ALL ? () => true : (index) => isSet(bits, index);
  }

  /** Notes that `part` was laid over `before`. */
  note(chunkId: number, before: Samples | null, part: Samples, merge: Merge): void {
    const bits = this.byChunk.get(chunkId);
    const met = part.ts.length - merge.added;
    if (before === null || bits === ALL || met === before.ts.length) this.byChunk.set(chunkId, ALL);
    else this.byChunk.set(chunkId, bitsAfter(merge.merged ?? before, before, part, bits));
  }
}

/** Bits of the samples that stand now: those of `part`, and those of `before` whose bit was set. */
function bitsAfter(now: Samples, before: Samples, part: Samples, bits: Uint8Array | undefined): Uint8Array {
  const after = new Uint8Array(Math.ceil(now.ts.length / 8));
  let i = 0;
  let j = 0;
  for (let k = 0; k < now.ts.length; k++) {
    const time = now.ts[k] as number;
    const inPart = part.ts[j] === time;
    const stood = before.ts[i] === time;
    if (inPart || (stood && bits !== undefined && isSet(bits, i))) setBit(after, k);
    if (inPart) j++;
    if (stood) i++;
  }
  return after;
}

const isSet = (bits: Uint8Array, index: number): boolean => (((bits[index >> 3] as number) >> (index & 7)) & 1) === 1;

function setBit(bits: Uint8Array, index: number): void {
  bits[index >> 3] = (bits[index >> 3] as number) | (1 << (index & 7));
}
