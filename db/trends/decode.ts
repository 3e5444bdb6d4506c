import { chunkCrc } from "./chunk-crc";
import {
  ChunkError,
  CRC_OFFSET,
  FLAG_DICTIONARY,
  FLAG_STATUS_SECTION,
  FORMAT_VERSION,
  HEADER_BYTES,
  KIND_GRID,
  KIND_STAMPED,
  type Samples,
  TOKEN_LONG_GAP,
  TOKEN_LONG_RUN,
  TOKEN_RUN,
  TOKEN_TWO_BYTES,
  TOKEN_U16,
} from "./chunk-format";
import { readDictionary } from "./dictionary";
import { SampleRoom } from "./sample-room";
import { readVarint, varintBytes } from "./tokens";

/** Arrays that a chunk is unpacked into, from index `start`. */
export type Target = { ts: Float64Array; v: Int32Array; start: number };

/** Unpacks a chunk, into arrays of its own where no room is given. Throws `ChunkError` when it is damaged or unknown. */
export function decodeChunk(chunk: Buffer, room = new SampleRoom()): Samples {
  const { ts, v } = room.take(chunkCount(chunk));
  decodeChunkInto(chunk, { ts, v, start: 0 });
  return { ts, v, decimals: chunkDecimals(chunk) };
}

/** Number of samples by the header, which has not been checked: `decodeChunkInto` does. */
export function chunkCount(chunk: Buffer): number {
  return chunk.length < HEADER_BYTES ? 0 : chunk.readUInt32LE(8);
}

export function chunkDecimals(chunk: Buffer): number {
  return chunk[2] ?? 0;
}

/** Unpacks a chunk after checking its CRC; returns the number of samples. `target` must have room for `chunkCount`. */
export function decodeChunkInto(chunk: Buffer, target: Target): number {
  checkHeader(chunk);
  const count = chunk.readUInt32LE(8);
  const step = chunk.readUInt32LE(4);
  const first = Number(chunk.readBigInt64LE(12));
  const unit = chunk.readUInt32LE(28);
  const timesEnd = HEADER_BYTES + chunk.readUInt32LE(32);
  const valuesAt = timesEnd + chunk.readUInt32LE(36);
  const valuesEnd = valuesAt + chunk.readUInt32LE(40);
  const end = target.start + count;
  if (end > target.ts.length || end > target.v.length) throw new ChunkError("holds more samples than its row says");

  target.v[target.start] = chunk.readInt32LE(24);
  target.ts[target.start] = first;
  const values = { bytes: chunk, at: valuesAt, end: valuesEnd, unit };
  if (chunk[1] === KIND_GRID) {
    decodeGrid(values, target.ts, target.v, { at: target.start + 1, end, first, step });
  } else {
    decodeTimes({ bytes: chunk, at: HEADER_BYTES, end: timesEnd, unit: 1 }, target.ts, target.start + 1, end, step);
    decodeGrid(values, null, target.v, { at: target.start + 1, end, first, step });
  }
  if (valuesAt > timesEnd) lookUp(target.v, target.start, end, readDictionary(chunk.subarray(timesEnd, valuesAt)));
  return count;
}

/** Puts values in the place of their indices. */
function lookUp(v: Int32Array, start: number, end: number, dictionary: Int32Array): void {
  for (let i = start; i < end; i++) v[i] = dictionary[v[i] as number] as number;
}

function checkHeader(chunk: Buffer): void {
  if (chunk.length < HEADER_BYTES) throw new ChunkError("is cut off");
  if (chunk[0] !== FORMAT_VERSION) throw new ChunkError(`has format ${chunk[0]}; this program reads ${FORMAT_VERSION}`);
  if (chunk.readUInt32LE(CRC_OFFSET) !== chunkCrc(chunk)) throw new ChunkError("does not agree with its checksum");
  const kindKnown = chunk[1] === KIND_GRID || chunk[1] === KIND_STAMPED;
  if (!kindKnown || ((chunk[3] ?? 0) & ~(FLAG_STATUS_SECTION | FLAG_DICTIONARY)) !== 0)
    throw new ChunkError("uses an unknown option");
}

type TokenStream = { bytes: Uint8Array; at: number; end: number; unit: number };

/** One pass over value tokens: a running sum into `v` and, for a grid, the slots' times into `ts`. */
function decodeGrid(
  { bytes, at, end, unit }: TokenStream,
  ts: Float64Array | null,
  v: Int32Array,
  slots: { at: number; end: number; first: number; step: number },
): void {
  const { step } = slots;
  let read = at;
  let write = slots.at;
  let value = v[write - 1] as number;
  let time = slots.first;
  while (write < slots.end && read < end) {
    const byte = bytes[read++] as number;
    let z = byte;
    if (byte >= TOKEN_TWO_BYTES) {
      if (byte < TOKEN_U16) {
        z = TOKEN_TWO_BYTES + ((byte - TOKEN_TWO_BYTES) << 8) + (bytes[read++] as number);
      } else if (byte >= TOKEN_RUN || byte === TOKEN_LONG_RUN) {
        let run = byte - TOKEN_RUN + 2;
        if (byte === TOKEN_LONG_RUN) {
          run = readVarint(bytes, read);
          read += varintBytes(run);
        }
        const stop = Math.min(write + run, slots.end);
        if (ts === null) {
          v.fill(value, write, stop);
          write = stop;
        } else {
          for (; write < stop; write++) {
            time += step;
            ts[write] = time;
            v[write] = value;
          }
        }
        continue;
      } else if (byte >= TOKEN_LONG_GAP) {
        let gap = byte - TOKEN_LONG_GAP;
        if (gap === 0) {
          gap = readVarint(bytes, read);
          read += varintBytes(gap);
        }
        time += step * gap;
        continue;
      } else {
        const size = byte === TOKEN_U16 ? 2 : 4;
        z = readUnsigned(bytes, read, size);
        read += size;
      }
    }
    value = (value + Math.imul(unit, (z >>> 1) ^ -(z & 1))) | 0;
    v[write] = value;
    if (ts !== null) {
      time += step;
      ts[write] = time;
    }
    write++;
  }
  if (write !== slots.end || read !== end) throw new ChunkError("does not hold the number of samples it names");
}

/** Time tokens of a stamped chunk: each is the distance to the sample before, less the usual one. */
function decodeTimes({ bytes, at, end }: TokenStream, ts: Float64Array, start: number, stop: number, step: number) {
  const distances = new Int32Array(stop - start + 1);
  decodeGrid({ bytes, at, end, unit: 1 }, null, distances, { at: 1, end: distances.length, first: 0, step: 0 });
  let time = ts[start - 1] as number;
  let before = 0;
  for (let i = start; i < stop; i++) {
    const sum = distances[i - start + 1] as number;
    time += ((sum - before) | 0) + step;
    before = sum;
    ts[i] = time;
  }
}

function readUnsigned(bytes: Uint8Array, at: number, size: number): number {
  let n = 0;
  for (let i = size - 1; i >= 0; i--) n = ((n << 8) | (bytes[at + i] as number)) >>> 0;
  return n;
}
