import type Database from "better-sqlite3";
import { chunkIdRange, chunkPeriod } from "./bucket";
import { ChunkError, type Samples } from "./chunk-format";
import { decodeChunk } from "./decode";
import { encodeChunk } from "./encode";
import { SampleRoom } from "./sample-room";

export type SeriesRow = {
  id: number;
  decimals: number;
  n: number;
  first_ts: number | null;
  last_ts: number | null;
  last_v: number | null;
  rev: number;
};

/** The last sample of a chunk, and the chunk's id. */
export type ChunkEnd = { chunk: number; ts: number; v: number; decimals: number };

/** The prepared statements of the store's own tables, under the names that their use has. */
export type Tables = ReturnType<typeof openTables>;

export function openTables(db: Database.Database) {
  const selectChunk = db.prepare<[number], Buffer>("select data from chunk where id = ?").pluck();
  const selectRange = db.prepare<[number, number], { id: number; n: number; data: Buffer }>(
    "select id, n, data from chunk where id between ? and ? order by id",
  );
  const selectSpans = db.prepare<[number, number], { id: number; t0: number; t1: number }>(
    "select id, t0, t1 from chunk where id between ? and ? order by id",
  );
  const selectBefore = db.prepare<[number, number, number], { id: number; data: Buffer }>(
    "select id, data from chunk where id between ? and ? and t0 <= ? order by id desc limit 1",
  );
  const replaceChunk = db.prepare(
    "replace into chunk (id, n, t0, t1, vmin, vmax, vsum, data) values (?,?,?,?,?,?,?,?)",
  );
  const deleteChunk = db.prepare("delete from chunk where id = ?");
  const selectSeries = db.prepare<[number], SeriesRow>("select * from series where id = ?");
  const selectSeriesOf = db.prepare<[string], SeriesRow>(
    "select series.* from json_each(?) wanted cross join series on series.id = wanted.value",
  );
  const aggregate = db.prepare<
    [number, number],
    { n: number; t0: number | null; last: number | null; decimals: string }
  >(
    "select coalesce(sum(n), 0) n, min(t0) t0, max(id) last, max(hex(substr(data, 3, 1))) decimals from chunk where id between ? and ?",
  );
  const selectLargest = db.prepare<[number, number], { decimals: string; largest: number }>(
    `select hex(substr(data, 3, 1)) decimals, case when max(vmax) >= -min(vmin) then max(vmax) else min(vmin) end largest
     from chunk where id between ? and ? group by 1`,
  );
  const upsertSeries = db.prepare(
    `insert into series (id, decimals, n, first_ts, last_ts, last_v, rev) values (?, ?, ?, ?, ?, ?, 1)
     on conflict (id) do update set decimals = excluded.decimals, n = excluded.n, first_ts = excluded.first_ts,
       last_ts = excluded.last_ts, last_v = excluded.last_v, rev = rev + 1`,
  );
  const newestRoom = new SampleRoom();

  return {
    series: (id: number) => selectSeries.get(id),
    /** The rows of several series in one go, in the order asked. */
    seriesRows(ids: readonly number[]): (SeriesRow | undefined)[] {
      const found = new Map(selectSeriesOf.all(JSON.stringify(ids)).map((row) => [row.id, row]));
      return ids.map((id) => found.get(id));
    },
    chunkData: (id: number) => selectChunk.get(id),
    chunksBetween: (firstId: number, lastId: number) => selectRange.all(firstId, lastId),
    chunkSpans: (firstId: number, lastId: number) => selectSpans.all(firstId, lastId),
    /** Newest chunk of ids `firstId` to `lastId` that starts at `ts` or before. */
    chunkAtOrBefore: (firstId: number, lastId: number, ts: number) => selectBefore.get(firstId, lastId, ts),
    deleteChunk: (id: number) => deleteChunk.run(id),

    /** The value farthest from 0, scaled, among the chunks of a series that keep the same number of decimals. */
    largestByDecimals(series: number): { decimals: number; largest: number }[] {
      const range = chunkIdRange(series);
      const groups = selectLargest.all(range.first, range.last);
      return groups.map(({ decimals, largest }) => ({ decimals: Number.parseInt(decimals, 16), largest }));
    },

    /** Writes a chunk with its summary; `data` is given when the samples came out of it. */
    putChunk(id: number, samples: Samples, data: Buffer = encodeChunk(samples)): void {
      const { ts, v } = samples;
      const { vmin, vmax, vsum } = summary(v);
      replaceChunk.run(id, ts.length, ts[0], ts[ts.length - 1], vmin, vmax, vsum, data);
    },

    /**
     * Brings the series' row in line with its chunks and raises its revision by one. `written` is the end of the latest of
     * its chunks that was just written: if it is the newest of all, no chunk has to be unpacked for its last sample.
     */
    refreshSeries(id: number, written: ChunkEnd | null = null): void {
      const range = chunkIdRange(id);
      const kept = aggregate.get(range.first, range.last);
      if (kept === undefined || kept.last === null) {
        upsertSeries.run(id, 0, 0, null, null, null);
        return;
      }
      const { n, t0, last } = kept;
      const end =
        written?.chunk === last ? written : lastOf(last, readChunk(last, selectChunk.get(last) as Buffer, newestRoom));
      const decimals = Number.parseInt(kept.decimals, 16);
      upsertSeries.run(id, decimals, n, t0, end.ts, end.v * 10 ** (decimals - end.decimals));
    },
  };
}

/** The last sample of samples that are a chunk's. */
export const lastOf = (chunk: number, { ts, v, decimals }: Samples): ChunkEnd => ({
  chunk,
  ts: ts[ts.length - 1] as number,
  v: v[v.length - 1] as number,
  decimals,
});

/** Unpacks a chunk; what is wrong with it is said with the series and the period. */
export function readChunk(id: number, data: Buffer, room?: SampleRoom): Samples {
  return withChunkNamed(id, () => {
    const samples = decodeChunk(data, room);
    const { from, to } = chunkPeriod(id);
    const inPeriod = (samples.ts[0] ?? from) >= from && (samples.ts[samples.ts.length - 1] ?? from) < to;
    if (!inPeriod) throw new ChunkError("holds samples of another period");
    return samples;
  });
}

export function withChunkNamed<T>(id: number, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof ChunkError)) throw error;
    const { series, from, to } = chunkPeriod(id);
    const day = (ts: number) => new Date(ts * 1000).toISOString().slice(0, 10);
    throw new ChunkError(
      `the stored trend of series ${series} from ${day(from)} to ${day(to)} (UTC) ${error.message}: restore a backup, or remove that period and import it again`,
    );
  }
}

function summary(v: Int32Array): { vmin: number; vmax: number; vsum: number } {
  let vmin = v[0] as number;
  let vmax = vmin;
  let vsum = 0;
  for (let i = 0; i < v.length; i++) {
    const value = v[i] as number;
    if (value < vmin) vmin = value;
    if (value > vmax) vmax = value;
    vsum += value;
  }
  return { vmin, vmax, vsum };
}
