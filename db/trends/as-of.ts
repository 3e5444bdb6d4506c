import type { Reading } from "@/lib/trends/trend-store";
import { assertSeriesId, chunkIdAt, chunkIdRange, FIRST_SECOND, LAST_SECOND } from "./bucket";
import type { Samples } from "./chunk-format";
import { lowerBound } from "./lower-bound";
import { readChunk, type Tables } from "./tables";

export type AsOfQuery = { series: number; ts: number; maxAgeSeconds?: number };

/**
 * For each query the last reading at or before its time, or null: none, or older than `maxAgeSeconds`. Answers stand
 * in the order of the queries; they are worked through by series and time, so that a chunk is unpacked once.
 */
export function readAsOf(tables: Tables, queries: readonly AsOfQuery[]): (Reading | null)[] {
  const answers: (Reading | null)[] = queries.map(() => null);
  const order = [...queries.keys()].sort((a, b) => {
    const [p, q] = [queries[a] as AsOfQuery, queries[b] as AsOfQuery];
    return p.series - q.series || p.ts - q.ts;
  });
  const unpacked = new LastChunk(tables);
  for (const index of order) {
    const query = queries[index] as AsOfQuery;
    const reading = unpacked.readingAt(query.series, query.ts);
    const tooOld = reading !== null && query.ts - reading.ts > (query.maxAgeSeconds ?? Number.POSITIVE_INFINITY);
    answers[index] = tooOld ? null : reading;
  }
  return answers;
}

/** The chunk unpacked last, kept while the queries stay in it. */
class LastChunk {
  private id = -1;
  private samples: Samples | null = null;

  constructor(private readonly tables: Tables) {}

  readingAt(series: number, ts: number): Reading | null {
    assertSeriesId(series);
    if (!(ts >= FIRST_SECOND)) return null;
    const samples = this.chunkFor(series, Math.min(ts, LAST_SECOND));
    if (samples === null) return null;
    const after = lowerBound(samples.ts, ts);
    const index = samples.ts[after] === ts ? after : after - 1;
    const [time, value] = [samples.ts[index], samples.v[index]];
    if (time === undefined || value === undefined) return null;
    return { series, ts: time, value: value / 10 ** samples.decimals };
  }

  private chunkFor(series: number, ts: number): Samples | null {
    const wanted = chunkIdAt(series, ts);
    if (wanted === this.id && this.samples !== null && (this.samples.ts[0] ?? ts + 1) <= ts) return this.samples;
    const found = this.tables.chunkAtOrBefore(chunkIdRange(series).first, wanted, ts);
    if (found === undefined) return null;
    if (found.id !== this.id) {
      this.samples = readChunk(found.id, found.data);
      this.id = found.id;
    }
    return this.samples;
  }
}
