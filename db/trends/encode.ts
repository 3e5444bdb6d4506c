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
import { LARGEST_TOKENS_PER_SAMPLE, TokenWriter } from "./tokens";

const NOTHING = Buffer.alloc(0);

/** Packs samples (ascending, no equal times, at least one) into a chunk. Equal samples give equal bytes. */
export function encodeChunk({ ts, v, decimals }: Samples): Buffer {
  const first = ts[0];
  if (first === undefined) throw new RangeError("a chunk holds at least one sample");

  const distances = distancesOf(ts);
  const grid = gridStep(distances);
  const step = grid ?? lowerMedian(distances);
  const times = grid === null ? timeTokens(distances, step) : NOTHING;
  const values = packValues(v, grid === null ? null : { distances, step });

  const header = Buffer.alloc(HEADER_BYTES);
  header[0] = FORMAT_VERSION;
  header[1] = grid === null ? KIND_STAMPED : KIND_GRID;
  header[2] = decimals;
  header[3] = values.dictionary.length > 0 ? FLAG_DICTIONARY : 0;
  header.writeUInt32LE(step, 4);
  header.writeUInt32LE(ts.length, 8);
  header.writeBigInt64LE(BigInt(first), 12);
  header.writeInt32LE(values.first, 24);
  header.writeUInt32LE(values.unit, 28);
  header.writeUInt32LE(times.length, 32);
  header.writeUInt32LE(values.dictionary.length, 36);
  header.writeUInt32LE(values.tokens.length, 40);
  const chunk = Buffer.concat([header, times, values.dictionary, values.tokens]);
  chunk.writeUInt32LE(chunkCrc(chunk), CRC_OFFSET);
  return chunk;
}

type Grid = { distances: Int32Array; step: number } | null;
type PackedValues = { first: number; unit: number; dictionary: Buffer; tokens: Buffer };

/** Values as they are or, where those take more than a byte each, by a dictionary if that is shorter. */
function packValues(v: Int32Array, grid: Grid): PackedValues {
  const unit = unitOf(v);
  const plain = { first: v[0] ?? 0, unit, dictionary: NOTHING, tokens: valueTokens(v, unit, grid) };
  if (plain.tokens.length <= v.length) return plain;
  const indexed = indexValues(v);
  if (indexed === null) return plain;
  const dictionary = writeDictionary(indexed.values);
  const tokens = valueTokens(indexed.indices, 1, grid);
  const shorter = dictionary.length + tokens.length < plain.tokens.length;
  return shorter ? { first: indexed.indices[0] ?? 0, unit: 1, dictionary, tokens } : plain;
}

function timeTokens(distances: Int32Array, step: number): Buffer {
  const out = Buffer.allocUnsafe(distances.length * LARGEST_TOKENS_PER_SAMPLE);
  const writer = new TokenWriter(out, 0);
  for (const distance of distances) writer.difference(distance - step);
  return out.subarray(0, writer.end());
}

function valueTokens(v: Int32Array, unit: number, grid: Grid): Buffer {
  const out = Buffer.allocUnsafe(v.length * LARGEST_TOKENS_PER_SAMPLE);
  const writer = new TokenWriter(out, 0);
  for (let i = 1; i < v.length; i++) {
    if (grid !== null) {
      const distance = grid.distances[i - 1] as number;
      if (distance !== grid.step) writer.gap(distance / grid.step - 1);
    }
    writer.difference((((v[i] as number) - (v[i - 1] as number)) / unit) | 0);
  }
  return out.subarray(0, writer.end());
}

function distancesOf(ts: Float64Array): Int32Array {
  const distances = new Int32Array(ts.length - 1);
  for (let i = 1; i < ts.length; i++) distances[i - 1] = (ts[i] as number) - (ts[i - 1] as number);
  return distances;
}

/** Distance of slots when most neighbours are one slot apart, or null: then the times are kept themselves. */
function gridStep(distances: Int32Array): number | null {
  let step = 0;
  for (const distance of distances) {
    if (step === 0 || distance % step !== 0) step = greatestCommonDivisor(distance, step);
    if (step === 1) break;
  }
  let neighbours = 0;
  for (const distance of distances) if (distance === step) neighbours++;
  return 2 * neighbours >= distances.length ? step : null;
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
