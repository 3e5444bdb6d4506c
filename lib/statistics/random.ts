/** A source of uniform numbers in [0, 1); the same seed gives the same sequence on every machine. */
export type RandomSource = () => number;

/**
 * Seeded generator with 32 bits of state (Mulberry32, public domain, T. Ettinger). Period 2^32: enough for
 * draws of ranges, not for cryptography.
 */
export function seededRandom(seed: number): RandomSource {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** The number at `index` of `seededRandom(seed)`, from 0, without those before it: the state only counts on. */
export function uniformAt(seed: number, index: number): number {
  const state = (seed + Math.imul(index + 1, 0x6d2b79f5)) | 0;
  let mixed = Math.imul(state ^ (state >>> 15), state | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
}

/** A stable 32-bit seed for a name (FNV-1a), so that each input of a study has a stream of its own. */
export function seedFromText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash ^= text.charCodeAt(i);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}
