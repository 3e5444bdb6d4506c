import { bytesInMemory } from "./byte-source";
import { orderReadings } from "./order-and-duplicates";
import { readTrendParts } from "./read-trend-parts";
import type { PartPoint, TrendFileInput, TrendReading } from "./trend-file";

/**
 * Reads a trend export that fits into memory, with the readings of every point. Pure: bytes in, result out. Throws a
 * RangeError for a time zone that is none. For files of any size see `readTrendParts`.
 */
export async function readTrendFile({
  bytes,
  ...input
}: TrendFileInput & { blockBytes?: number }): Promise<TrendReading> {
  const parts = readTrendParts({ ...input, source: bytesInMemory(bytes) });
  const pieces = new Map<string, PartPoint[]>();
  let next = await parts.next();
  for (; !next.done; next = await parts.next()) {
    if (next.value.isFirst) pieces.clear();
    for (const { tsUtcSeconds, values, among: _among, ...point } of next.value.points) {
      const piece = { ...point, tsUtcSeconds: tsUtcSeconds.slice(), values: values.slice() };
      pieces.set(point.name, [...(pieces.get(point.name) ?? []), piece]);
    }
  }
  const points = next.value.points.map(({ name, sampling, missing }) => ({
    ...joined(pieces.get(name) as PartPoint[]),
    sampling,
    missing,
  }));
  return { ...next.value, points: next.value.refusal ? [] : points };
}

/** A point of several parts with its readings by time; of several at one instant the later one of the file is kept. */
function joined(pieces: readonly PartPoint[]): PartPoint {
  const [first] = pieces as [PartPoint];
  if (pieces.length === 1) return first;
  const names = [...new Set(pieces.flatMap(({ stateNames }) => stateNames ?? []))].sort();
  const ts = Float64Array.from(pieces.flatMap(({ tsUtcSeconds }) => [...tsUtcSeconds]));
  const values = Float64Array.from(
    pieces.flatMap(({ values: own, stateNames }) =>
      stateNames ? [...own].map((value) => names.indexOf(stateNames[value] as string)) : [...own],
    ),
  );
  const ordered = orderReadings({ ts, values, rows: Int32Array.from({ length: ts.length }, (_, i) => i) });
  return {
    ...first,
    tsUtcSeconds: ordered.ts,
    values: ordered.values,
    ...(names.length > 0 ? { stateNames: names } : {}),
  };
}
