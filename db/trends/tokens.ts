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

/** Writes differences and gaps as tokens into `out`; runs of zeros are held back until they end. */
export class TokenWriter {
  at: number;
  private zeros = 0;

  constructor(
    private readonly out: Uint8Array,
    start: number,
  ) {
    this.at = start;
  }

  /** A difference of any 32 bits. */
  difference(d: number): void {
    if (d === 0) {
      this.zeros++;
      return;
    }
    if (this.zeros > 0) this.endRun();
    const z = ((d << 1) ^ (d >> 31)) >>> 0;
    if (z <= ONE_BYTE_LIMIT) {
      this.out[this.at++] = z;
    } else if (z <= TWO_BYTE_LIMIT) {
      const rest = z - ONE_BYTE_LIMIT - 1;
      this.out[this.at++] = TOKEN_TWO_BYTES + (rest >>> 8);
      this.out[this.at++] = rest;
    } else if (z <= 0xffff) {
      this.out[this.at++] = TOKEN_U16;
      this.bytes(z, 2);
    } else {
      this.out[this.at++] = TOKEN_U32;
      this.bytes(z, 4);
    }
  }

  gap(slots: number): void {
    if (this.zeros > 0) this.endRun();
    if (slots <= SHORT_GAP_LIMIT) {
      this.out[this.at++] = TOKEN_LONG_GAP + slots;
    } else {
      this.out[this.at++] = TOKEN_LONG_GAP;
      this.varint(slots);
    }
  }

  /** Ends the stream; returns the position after it. */
  end(): number {
    if (this.zeros > 0) this.endRun();
    return this.at;
  }

  private endRun(): void {
    const n = this.zeros;
    this.zeros = 0;
    if (n === 1) {
      this.out[this.at++] = 0;
    } else if (n <= SHORT_RUN_LIMIT) {
      this.out[this.at++] = TOKEN_RUN + n - 2;
    } else {
      this.out[this.at++] = TOKEN_LONG_RUN;
      this.varint(n);
    }
  }

  private varint(n: number): void {
    this.at = writeVarint(this.out, this.at, n);
  }

  private bytes(n: number, count: number): void {
    for (let i = 0; i < count; i++) this.out[this.at++] = n >>> (8 * i);
  }
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
