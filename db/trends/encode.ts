import { chunkCrc } from "./chunk-crc";
import { CRC_OFFSET, FORMAT_VERSION, HEADER_BYTES, KIND_GRID, KIND_STAMPED, type Samples } from "./chunk-format";
import { LARGEST_TOKENS_PER_SAMPLE, TokenWriter } from "./tokens";

/** Packs samples (ascending, no equal times, at least one) into a chunk. Equal samples give equal bytes. */
export function encodeChunk({ ts, v, decimals }: Samples): Buffer {
  const count = ts.length;
  const first = ts[0];
  const firstValue = v[0];
  if (first === undefined || firstValue === undefined) throw new RangeError("a chunk holds at least one sample");

  const out = Buffer.allocUnsafe(HEADER_BYTES + count * LARGEST_TOKENS_PER_SAMPLE);
  const distances = distancesOf(ts);
  const grid = gridStep(distances);
  const step = grid ?? lowerMedian(distances);
  const unit = unitOf(v);
  const valuesAt = grid === null ? writeTimes(out, distances, step) : HEADER_BYTES;
  const end = grid === null ? writeValues(out, valuesAt, v, unit) : writeGrid(out, v, unit, distances, step);

  out[0] = FORMAT_VERSION;
  out[1] = grid === null ? KIND_STAMPED : KIND_GRID;
  out[2] = decimals;
  out[3] = 0;
  out.writeUInt32LE(step, 4);
  out.writeUInt32LE(count, 8);
  out.writeBigInt64LE(BigInt(first), 12);
  out.writeInt32LE(firstValue, 24);
  out.writeUInt32LE(unit, 28);
  out.writeUInt32LE(valuesAt - HEADER_BYTES, 32);
  out.writeUInt32LE(end - valuesAt, 36);
  const chunk = Buffer.from(out.subarray(0, end));
  chunk.writeUInt32LE(chunkCrc(chunk), CRC_OFFSET);
  return chunk;
}

function writeTimes(out: Buffer, distances: Int32Array, step: number): number {
  const tokens = new TokenWriter(out, HEADER_BYTES);
  for (const distance of distances) tokens.difference(distance - step);
  return tokens.end();
}

function writeValues(out: Buffer, start: number, v: Int32Array, unit: number): number {
  const tokens = new TokenWriter(out, start);
  for (let i = 1; i < v.length; i++) tokens.difference((((v[i] as number) - (v[i - 1] as number)) / unit) | 0);
  return tokens.end();
}

function writeGrid(out: Buffer, v: Int32Array, unit: number, distances: Int32Array, step: number): number {
  const tokens = new TokenWriter(out, HEADER_BYTES);
  for (let i = 1; i < v.length; i++) {
    const distance = distances[i - 1] as number;
    if (distance !== step) tokens.gap(distance / step - 1);
    tokens.difference((((v[i] as number) - (v[i - 1] as number)) / unit) | 0);
  }
  return tokens.end();
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
