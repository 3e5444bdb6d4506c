/*
 * A chunk: the samples of one series in one period of 28 days (see bucket.ts), as the blob `chunk.data`.
 * All numbers are little-endian. Enough to write a reader in another language (there is one in Python,
 * test/check-values/trend-store/read_chunks.py, written from this text alone):
 *
 *   offset  size  field
 *   0       1     version, 1
 *   1       1     kind: 0 grid, 1 stamped
 *   2       1     decimals: a sample's value is its integer / 10^decimals
 *   3       1     flags: bit 0 a status section follows, bit 1 there is a dictionary; other bits 0
 *   4       4     u32 step [s]. Grid: distance of slots. Stamped: the usual distance, subtracted from every distance
 *   8       4     u32 count of samples, at least 1
 *   12      8     i64 first second, UTC, since 1970 without leap seconds
 *   20      4     u32 CRC-32 (ISO-HDLC, as in zip) of bytes 0-19 followed by bytes 24 to the end
 *   24      4     i32 first number (of the first sample)
 *   28      4     u32 unit: every difference of neighbouring numbers is a multiple of it
 *   32      4     u32 length T of the time tokens in bytes, 0 when the kind is grid
 *   36      4     u32 length D of the dictionary in bytes, 0 when there is none
 *   40      4     u32 length V of the value tokens in bytes
 *   44      T     time tokens (stamped only): for each sample but the first, distance to the one before - step
 *   ...     D     dictionary: i32 smallest value, then per further value varint (value - value before), ascending
 *   ...     V     value tokens: for each sample but the first, (number - number before) / unit, modulo 2^32
 *   ...     rest  status section, when flagged: u8 version (1), then runs of samples whose state is not ok, each
 *                 varint (samples skipped since the end of the run before), varint length, u8 state.
 *                 Reserved: nothing writes it yet, and version 1 of the reader skips it
 *
 * A sample's number is its value; with a dictionary it is the index of its value there, from 0. Dictionaries keep
 * readings small whose steps became uneven by conversion, such as tenths of °F in thousandths of °C.
 *
 * Tokens stand for signed integers d, folded to z = d >= 0 ? 2d : -2d - 1 (zigzag), and runs of d = 0:
 *
 *   first byte   then       meaning
 *   00-BF                   one difference, z = byte (0 to 191)
 *   C0-DF        u8 b       one difference, z = 192 + 256 * (byte - C0) + b (192 to 8383)
 *   E0           u16 z      one difference
 *   E1           u32 z      one difference
 *   E2           varint n   n differences of 0
 *   E3           varint n   n empty slots of the grid before the next sample (value tokens of a grid only)
 *   E4-EF                   byte - E3 empty slots (1 to 12)
 *   F0-FF                   byte - EE differences of 0 (2 to 17)
 *
 * A varint has 7 bits a byte, lowest first; the top bit says that another byte follows. Sample i of a grid stands at
 * first second + step * (i + empty slots before it). The encoder always takes the shortest form, so equal samples
 * give equal bytes.
 */
export const FORMAT_VERSION = 1;
export const HEADER_BYTES = 44;

export const KIND_GRID = 0;
export const KIND_STAMPED = 1;

export const FLAG_STATUS_SECTION = 1;
export const FLAG_DICTIONARY = 2;

export const CRC_OFFSET = 20;

export const TOKEN_TWO_BYTES = 0xc0;
export const TOKEN_U16 = 0xe0;
export const TOKEN_U32 = 0xe1;
export const TOKEN_LONG_RUN = 0xe2;
export const TOKEN_LONG_GAP = 0xe3;
export const TOKEN_RUN = 0xf0;

/** Largest folded difference in one byte, and in two. */
export const ONE_BYTE_LIMIT = TOKEN_TWO_BYTES - 1;
export const TWO_BYTE_LIMIT = ONE_BYTE_LIMIT + 1 + 256 * (TOKEN_U16 - TOKEN_TWO_BYTES) - 1;
/** Longest gap and longest run in one byte. */
export const SHORT_GAP_LIMIT = TOKEN_RUN - TOKEN_LONG_GAP - 1;
export const SHORT_RUN_LIMIT = 0xff - TOKEN_RUN + 2;

/** The samples of a chunk, ascending and without equal times. */
export type Samples = { ts: Float64Array; v: Int32Array; decimals: number };

/** A chunk that cannot be read: the file was damaged or written by a newer version. */
export class ChunkError extends Error {
  constructor(message: string) {
    super(message);
    this.name = "ChunkError";
  }
}
