import type { TrendSlice } from "@/lib/trends/trend-store";
import { assertSeriesId, chunkIdAt, clampToStore } from "./bucket";
import { chunkDecimals, decodeChunkInto } from "./decode";
import { lowerBound } from "./lower-bound";
import { type Tables, withChunkNamed } from "./tables";

/** Samples of one series with `from <= ts < to`, all at the decimals of the series. */
export function readSlice(tables: Tables, series: number, from: number, to: number): TrendSlice {
  assertSeriesId(series);
  const decimals = tables.series(series)?.decimals ?? 0;
  const [start, stop] = [clampToStore(from), clampToStore(to)];
  const chunks = start < stop ? tables.chunksBetween(chunkIdAt(series, start), chunkIdAt(series, stop - 1)) : [];
  const count = chunks.reduce((sum, chunk) => sum + chunk.n, 0);
  const ts = new Float64Array(count);
  const v = new Int32Array(count);

  let at = 0;
  for (const { id, data } of chunks) {
    const read = withChunkNamed(id, () => decodeChunkInto(data, { ts, v, start: at }));
    if (chunkDecimals(data) < decimals) scaleUp(v.subarray(at, at + read), 10 ** (decimals - chunkDecimals(data)));
    at += read;
  }
  const [i, j] = [lowerBound(ts.subarray(0, at), start), lowerBound(ts.subarray(0, at), stop)];
  return { series, ts: ts.subarray(i, j), v: v.subarray(i, j), decimals };
}

function scaleUp(v: Int32Array, factor: number): void {
  for (let i = 0; i < v.length; i++) v[i] = (v[i] as number) * factor;
}
