import { readVarint, varintBytes, writeVarint } from "./tokens";

/** A dictionary pays when each of its values stands for at least this many samples. */
const SAMPLES_PER_VALUE = 4;

/** The distinct values and, for each sample, the index of its value; null when there are too many to pay. */
export function indexValues(v: Int32Array): { values: Int32Array; indices: Int32Array } | null {
  const values = v.slice().sort();
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    if (i === 0 || values[i] !== values[count - 1]) values[count++] = values[i] as number;
  }
  if (count * SAMPLES_PER_VALUE > v.length) return null;
  const distinct = values.subarray(0, count);
  const indexOf = new Map<number, number>();
  for (let i = 0; i < count; i++) indexOf.set(distinct[i] as number, i);
  return { values: distinct, indices: v.map((value) => indexOf.get(value) as number) };
}

/** The dictionary's bytes: its smallest value, then the distance of each to the one before. */
export function writeDictionary(values: Int32Array): Buffer {
  const out = Buffer.allocUnsafe(4 + values.length * 5);
  let at = out.writeInt32LE(values[0] ?? 0, 0);
  for (let i = 1; i < values.length; i++) {
    at = writeVarint(out, at, (values[i] as number) - (values[i - 1] as number));
  }
  return out.subarray(0, at);
}

export function readDictionary(bytes: Buffer): Int32Array {
  const values = new Int32Array(bytes.length - 3);
  let value = bytes.readInt32LE(0);
  let count = 0;
  values[count++] = value;
  for (let at = 4; at < bytes.length; count++) {
    const distance = readVarint(bytes, at);
    at += varintBytes(distance);
    value += distance;
    values[count] = value;
  }
  return values;
}
