import { readVarint, varintBytes, writeVarint } from "./tokens";

/** A dictionary pays when each of its values stands for at least this many samples. */
const SAMPLES_PER_VALUE = 4;

/** Values that lie this close together are told apart by a table instead of by sorting. */
const LARGEST_TABLE = 65_536;

/** The distinct values and, for each sample, the index of its value; null when there are too many to pay. */
export function indexValues(v: Int32Array): { values: Int32Array; indices: Int32Array } | null {
  let smallest = v[0] ?? 0;
  let largest = smallest;
  for (let i = 1; i < v.length; i++) {
    const value = v[i] as number;
    if (value < smallest) smallest = value;
    if (value > largest) largest = value;
  }
  const span = largest - smallest + 1;
  return span <= LARGEST_TABLE ? indexByTable(v, smallest, span) : indexBySorting(v);
}

/** Used again for every chunk; all 0 in between. */
const table = new Int32Array(LARGEST_TABLE);

function indexByTable(v: Int32Array, smallest: number, span: number) {
  for (let i = 0; i < v.length; i++) table[(v[i] as number) - smallest] = 1;
  const values = new Int32Array(Math.floor(v.length / SAMPLES_PER_VALUE));
  let count = 0;
  for (let offset = 0; offset < span; offset++) {
    if (table[offset] === 0) continue;
    if (count < values.length) values[count] = smallest + offset;
    table[offset] = count++;
  }
  const indices = new Int32Array(count > values.length ? 0 : v.length);
  for (let i = 0; i < indices.length; i++) indices[i] = table[(v[i] as number) - smallest] as number;
  table.fill(0, 0, span);
  return count > values.length ? null : { values: values.subarray(0, count), indices };
}

function indexBySorting(v: Int32Array) {
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
