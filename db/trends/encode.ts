import { chunkCrc } from "./chunk-crc";
import {
  CRC_OFFSET,
  FLAG_DICTIONARY,
  FORMAT_VERSION,
  HEADER_BYTES,
  KIND_GRID,
  KIND_STAMPED,
  type Samples,
} from "./chunk-format";
import { indexValues, writeDictionary } from "./dictionary";
import { LARGEST_TOKENS_PER_SAMPLE, writeDifference, writeGap, writeRun } from "./tokens";

const NOTHING = Buffer.alloc(0);

/** Where chunks are put together, used again for each: making room anew would cost more than the packing. */
let room = makeRoom(0);

/** Chunks of more samples get room of their own, which is given up after them. */
const MOST_SAMPLES_KEPT_ROOM_FOR = 100_000;

/** Packs samples (ascending, no equal times, at least one) into a chunk. Equal samples give equal bytes. */
export function encodeChunk({ ts, v, decimals }: Samples): Buffer {
  const first = ts[0];
  if (first === undefined) throw new RangeError("a chunk holds at least one sample");

  const { bytes, distances: distancesRoom } = roomFor(ts.length);
  const distances = distancesOf(ts, distancesRoom);
  const grid = gridStep(distances);
  const step = grid ?? lowerMedian(distances);
  const timesEnd = grid === null ? writeTimes(bytes, 0, distances, step) : 0;
  const values = packValues(bytes, timesEnd, v, grid === null ? null : { distances, step });

  const valuesAt = HEADER_BYTES + timesEnd + values.dictionary.length;
  const chunk = Buffer.allocUnsafe(valuesAt + values.end - values.start);
  chunk[0] = FORMAT_VERSION;
  chunk[1] = grid === null ? KIND_STAMPED : KIND_GRID;
  chunk[2] = decimals;
  chunk[3] = values.dictionary.length > 0 ? FLAG_DICTIONARY : 0;
  chunk.writeUInt32LE(step, 4);
  chunk.writeUInt32LE(ts.length, 8);
  chunk.writeBigInt64LE(BigInt(first), 12);
  chunk.writeInt32LE(values.first, 24);
  chunk.writeUInt32LE(values.unit, 28);
  chunk.writeUInt32LE(timesEnd, 32);
  chunk.writeUInt32LE(values.dictionary.length, 36);
  chunk.writeUInt32LE(values.end - values.start, 40);
  bytes.copy(chunk, HEADER_BYTES, 0, timesEnd);
  values.dictionary.copy(chunk, HEADER_BYTES + timesEnd);
  bytes.copy(chunk, valuesAt, values.start, values.end);
  chunk.writeUInt32LE(chunkCrc(chunk), CRC_OFFSET);
  return chunk;
}

function roomFor(samples: number): typeof room {
  if (samples > MOST_SAMPLES_KEPT_ROOM_FOR) return makeRoom(samples);
  if (room.distances.length < samples) room = makeRoom(samples);
  return room;
}

/** Room for the times, for the values as they are and for their indices. */
function makeRoom(samples: number): { bytes: Buffer; distances: Int32Array } {
  return {
    bytes: Buffer.allocUnsafeSlow(3 * samples * LARGEST_TOKENS_PER_SAMPLE),
    distances: new Int32Array(samples),
  };
}

type Grid = { distances: Int32Array; step: number } | null;
type PackedValues = { first: number; unit: number; dictionary: Buffer; start: number; end: number };

/** Values as they are or, where those take more than a byte each, by a dictionary if that is shorter. */
function packValues(out: Buffer, start: number, v: Int32Array, grid: Grid): PackedValues {
  const unit = unitOf(v);
  const end = writeValues(out, start, v, unit, grid);
  const plain = { first: v[0] ?? 0, unit, dictionary: NOTHING, start, end };
  if (end - start <= v.length) return plain;
  const indexed = indexValues(v);
  if (indexed === null) return plain;
  const dictionary = writeDictionary(indexed.values);
  const indexEnd = writeValues(out, end, indexed.indices, 1, grid);
  if (dictionary.length + indexEnd - end >= end - start) return plain;
  return { first: indexed.indices[0] ?? 0, unit: 1, dictionary, start: end, end: indexEnd };
}

function writeTimes(out: Uint8Array, start: number, distances: Int32Array, step: number): number {
  let at = start;
  let zeros = 0;
  for (let i = 0; i < distances.length; i++) {
    const d = (distances[i] as number) - step;
    if (d === 0) {
      zeros++;
      continue;
    }
    if (zeros > 0) at = writeRun(out, at, zeros);
    zeros = 0;
    at = writeDifference(out, at, d);
  }
  return zeros > 0 ? writeRun(out, at, zeros) : at;
}

function writeValues(out: Uint8Array, start: number, v: Int32Array, unit: number, grid: Grid): number {
  let at = start;
  let zeros = 0;
  let before = v[0] as number;
  for (let i = 1; i < v.length; i++) {
    if (grid !== null) {
      const distance = grid.distances[i - 1] as number;
      if (distance !== grid.step) {
        if (zeros > 0) at = writeRun(out, at, zeros);
        zeros = 0;
        at = writeGap(out, at, distance / grid.step - 1);
      }
    }
    const value = v[i] as number;
    const d = unit === 1 ? (value - before) | 0 : ((value - before) / unit) | 0;
    before = value;
    if (d === 0) {
      zeros++;
      continue;
    }
    if (zeros > 0) at = writeRun(out, at, zeros);
    zeros = 0;
    at = writeDifference(out, at, d);
  }
  return zeros > 0 ? writeRun(out, at, zeros) : at;
}

function distancesOf(ts: Float64Array, into: Int32Array): Int32Array {
  const distances = into.subarray(0, ts.length - 1);
  for (let i = 1; i < ts.length; i++) distances[i - 1] = (ts[i] as number) - (ts[i - 1] as number);
  return distances;
}

/** Distance of slots when most neighbours are one slot apart, or null: then the times are kept themselves. */
function gridStep(distances: Int32Array): number | null {
  let step = 0;
  let neighbours = 0;
  for (let i = 0; i < distances.length; i++) {
    const distance = distances[i] as number;
    if (distance === step) neighbours++;
    else if (step === 0 || distance % step !== 0) {
      step = greatestCommonDivisor(distance, step);
      neighbours = countOf(distances, step, i + 1);
    }
  }
  return 2 * neighbours >= distances.length ? step : null;
}

function countOf(distances: Int32Array, step: number, end: number): number {
  let count = 0;
  for (let i = 0; i < end; i++) if (distances[i] === step) count++;
  return count;
}

function lowerMedian(distances: Int32Array): number {
  return distances.slice().sort()[(distances.length - 1) >> 1] ?? 0;
}

/** Greatest common divisor of all differences of neighbouring values; 1 when the values are all equal. */
function unitOf(v: Int32Array): number {
  let unit = 0;
  for (let i = 1; i < v.length && unit !== 1; i++) {
    const difference = Math.abs((v[i] as number) - (v[i - 1] as number));
    if (difference !== 0 && (unit === 0 || difference % unit !== 0)) unit = greatestCommonDivisor(difference, unit);
  }
  return unit === 0 ? 1 : unit;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y !== 0) [x, y] = [y, x % y];
  return x;
}
