import {
  ONE_BYTE_LIMIT,
  SHORT_GAP_LIMIT,
  SHORT_RUN_LIMIT,
  TOKEN_LONG_GAP,
  TOKEN_LONG_RUN,
  TOKEN_RUN,
  TOKEN_TWO_BYTES,
  TOKEN_U16,
  TOKEN_U32,
  TWO_BYTE_LIMIT,
} from "./chunk-format";

/** Most bytes that one sample can take: a gap of up to five bytes and a difference of five. */
export const LARGEST_TOKENS_PER_SAMPLE = 11;

/** Writes a difference other than 0, of any 32 bits; returns the position after it. */
export function writeDifference(out: Uint8Array, start: number, d: number): number {
  const z = ((d << 1) ^ (d >> 31)) >>> 0;
  let at = start;
  if (z <= ONE_BYTE_LIMIT) {
    out[at++] = z;
  } else if (z <= TWO_BYTE_LIMIT) {
    const rest = z - ONE_BYTE_LIMIT - 1;
    out[at++] = TOKEN_TWO_BYTES + (rest >>> 8);
    out[at++] = rest;
  } else {
    const size = z <= 0xffff ? 2 : 4;
    out[at++] = size === 2 ? TOKEN_U16 : TOKEN_U32;
    for (let i = 0; i < size; i++) out[at++] = z >>> (8 * i);
  }
  return at;
}

/** Writes a run of differences of 0, at least one; returns the position after it. */
export function writeRun(out: Uint8Array, start: number, zeros: number): number {
  let at = start;
  if (zeros === 1) {
    out[at++] = 0;
  } else if (zeros <= SHORT_RUN_LIMIT) {
    out[at++] = TOKEN_RUN + zeros - 2;
  } else {
    out[at++] = TOKEN_LONG_RUN;
    at = writeVarint(out, at, zeros);
  }
  return at;
}

/** Writes empty slots, at least one; returns the position after them. */
export function writeGap(out: Uint8Array, start: number, slots: number): number {
  let at = start;
  if (slots <= SHORT_GAP_LIMIT) {
    out[at++] = TOKEN_LONG_GAP + slots;
  } else {
    out[at++] = TOKEN_LONG_GAP;
    at = writeVarint(out, at, slots);
  }
  return at;
}

/** Writes a number of up to 32 bits, lowest seven first; returns the position after it. */
export function writeVarint(out: Uint8Array, start: number, n: number): number {
  let at = start;
  let rest = n >>> 0;
  while (rest > 0x7f) {
    out[at++] = (rest & 0x7f) | 0x80;
    rest >>>= 7;
  }
  out[at++] = rest;
  return at;
}

export function readVarint(bytes: Uint8Array, at: number): number {
  let n = 0;
  let byte = 0x80;
  for (let i = at, shift = 0; byte >= 0x80 && shift < 35; i++, shift += 7) {
    byte = bytes[i] as number;
    n |= (byte & 0x7f) << shift;
  }
  return n >>> 0;
}

/** Bytes that `writeVarint` takes for a number. */
export function varintBytes(n: number): number {
  let size = 1;
  for (let rest = n >>> 7; rest > 0; rest >>>= 7) size++;
  return size;
}
