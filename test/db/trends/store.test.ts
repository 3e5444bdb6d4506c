import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { BUCKET_SECONDS } from "@/db/trends/bucket";
import { type OpenTrendStore, openTrendStore } from "@/db/trends/store";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { storedChunks } from "../../support/stored-chunks";
import { syntheticYear } from "../../support/synthetic-trends";
import { regular, rowsOf, slice, T0 } from "../../support/trend-samples";

const END = T0 + 100 * 365 * 86_400;

let folder: string;
let file: string;
let store: OpenTrendStore;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "trends-"));
  file = path.join(folder, "trend.db");
  store = openTrendStore(file);
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true });
});

async function readAll(series: number, from = 0, to = END): Promise<[number, number][]> {
  for await (const read of store.read([series], from, to)) return rowsOf(read);
  throw new Error("no slice was given");
}

const quarterHours = (start: number, days: number) => regular(start, 900, days * 96, (i) => 210 + ((i * 7) % 11));

test("samples over several chunks come back, and those of a period only when asked so", async () => {
  const rows = quarterHours(T0, 100);
  expect(await store.write([slice(5, rows)], 1)).toEqual({
    added: 9600,
    changed: 0,
    same: 0,
    chunksWritten: 4,
    repeated: { same: 0, changed: 0 },
  });
  expect(await readAll(5)).toEqual(rows);
  const [from, to] = [T0 + 10 * 86_400 + 1, T0 + 70 * 86_400];
  expect(await readAll(5, from, to)).toEqual(rows.filter(([ts]) => ts >= from && ts < to));
  expect(await readAll(5, to, from)).toEqual([]);
});

test("series are read in the order asked, empty ones too", async () => {
  await store.write([slice(1, [[T0, 1]]), slice(2, [[T0, 2]])], 1);
  const read: TrendSlice[] = [];
  for await (const each of store.read([2, 7, 1], 0, END)) read.push(each);
  expect(read.map((each) => [each.series, each.ts.length])).toEqual([
    [2, 1],
    [7, 0],
    [1, 1],
  ]);
});

test("the same import again writes no chunk and leaves the revisions", async () => {
  const year = [...syntheticYear({ zones: 2, days: 365, seed: 9 })];
  const first = await store.write(year, 1);
  expect(first.chunksWritten).toBeGreaterThan(70);
  const before = { chunks: storedChunks(file), revs: await store.rev([1, 2, 3, 4, 5, 6]) };
  expect(await store.write(year, 2)).toEqual({
    added: 0,
    changed: 0,
    same: first.added,
    chunksWritten: 0,
    repeated: { same: 0, changed: 0 },
  });
  expect({ chunks: storedChunks(file), revs: await store.rev([1, 2, 3, 4, 5, 6]) }).toEqual(before);
});

test("an overlapping import adds what is new and overrules what differs", async () => {
  await store.write([slice(1, quarterHours(T0, 30))], 1);
  const later = quarterHours(T0 + 15 * 86_400, 30).map(([ts, v], i): [number, number] => [ts, i < 10 ? 999 : v]);
  const stats = await store.write([slice(1, later)], 2);
  expect(stats.added).toBe(15 * 96);
  expect(stats.changed + stats.same).toBe(15 * 96);
  expect(await readAll(1)).toEqual([...new Map([...quarterHours(T0, 30), ...later])]);
});

test("late arrival, many small slices and shuffled rows all end in the chunks of one plain import", async () => {
  const rows = quarterHours(T0, 90);
  const plain = await chunksAfter([slice(1, rows)]);
  const month = 30 * 96;
  expect(await chunksAfter([slice(1, rows.slice(2 * month))], [slice(1, rows)])).toEqual(plain);
  const small = Array.from({ length: 90 }, (_, day) => slice(1, rows.slice(day * 96, (day + 1) * 96)));
  expect(await chunksAfter(small)).toEqual(plain);
  const shuffled = rows.map((_, i) => rows[(i * 7919) % rows.length] as [number, number]);
  expect(new Set(shuffled.map(([ts]) => ts)).size).toBe(rows.length);
  expect(await chunksAfter([slice(1, shuffled)])).toEqual(plain);
});

async function chunksAfter(...imports: TrendSlice[][]): Promise<unknown> {
  const other = path.join(folder, `other-${Math.trunc(performance.now() * 1000)}.db`);
  const opened = openTrendStore(other);
  for (const [run, slices] of imports.entries()) await opened.write(slices, run + 1);
  opened.close();
  return storedChunks(other);
}

test("of times given twice the later row stands and the earlier is counted", async () => {
  const stats = await store.write(
    [
      slice(1, [
        [T0, 1],
        [T0 + 60, 5],
        [T0, 2],
      ]),
    ],
    1,
  );
  expect(stats).toMatchObject({ added: 2, changed: 0, same: 0, repeated: { same: 0, changed: 1 } });
  expect(await readAll(1)).toEqual([
    [T0, 2],
    [T0 + 60, 5],
  ]);
});

test("more decimals that come later are kept, and older values read the same", async () => {
  await store.write(
    [
      slice(
        1,
        regular(T0, 900, 10, (i) => 215 + i),
        1,
      ),
      slice(1, [[T0 + 3 * BUCKET_SECONDS, 200]], 1),
    ],
    1,
  );
  await store.write([slice(1, [[T0 + 450, 21_555]], 3)], 2);
  for await (const read of store.read([1], 0, END)) {
    expect(read.decimals).toBe(3);
    expect(rowsOf(read).slice(0, 3)).toEqual([
      [T0, 21_500],
      [T0 + 450, 21_555],
      [T0 + 900, 21_600],
    ]);
    expect(read.v[read.v.length - 1]).toBe(20_000);
  }
  expect(await store.latest([1])).toEqual([{ series: 1, ts: T0 + 3 * BUCKET_SECONDS, value: 20 }]);
  expect(await store.asOf([{ series: 1, ts: T0 + 899 }])).toEqual([{ series: 1, ts: T0 + 450, value: 21.555 }]);
});

test("a value too large for the decimals of its series is refused with its name", async () => {
  await store.write([slice(3, [[T0, 2_000_000_000]], 0)], 1);
  const fine = [slice(3, [[T0 + 3 * BUCKET_SECONDS, 5]], 2)];
  await expect(store.write(fine, 2)).rejects.toThrow("series 3: the value 2000000000 cannot be kept with 2 decimals");
  await store.write([slice(4, [[T0, 1]], 5)], 3);
  const large = [slice(4, [[T0 + 3 * BUCKET_SECONDS, 30_000]], 0)];
  await expect(store.write(large, 4)).rejects.toThrow("series 4: the value 30000 cannot be kept with 5 decimals");
  expect(await readAll(4)).toEqual([[T0, 1]]);
});

test("what cannot be kept is refused in plain words", async () => {
  const bad = (over: Partial<TrendSlice>) => store.write([{ ...slice(1, [[T0, 1]]), ...over }], 1);
  await expect(bad({ series: 0 })).rejects.toThrow("0 is not a series id");
  await expect(bad({ ts: Float64Array.of(T0 + 0.5) })).rejects.toThrow("must be a whole UTC second");
  await expect(bad({ ts: Float64Array.of(Number.NaN) })).rejects.toThrow("NaN is not a time");
  await expect(bad({ ts: Float64Array.of(0) })).rejects.toThrow("0 is not a time");
  await expect(bad({ v: Int32Array.of(1, 2) })).rejects.toThrow("1 times, but 2 values");
  await expect(bad({ decimals: 12 })).rejects.toThrow("12 decimals");
  expect(await store.extent([1])).toEqual([null]);
});

test("the last reading at or before a time is found, across chunks and within its age", async () => {
  await store.write(
    [
      slice(1, [
        [T0, 215],
        [T0 + 900, 216],
        [T0 + 3 * BUCKET_SECONDS, 217],
      ]),
    ],
    1,
  );
  const at = async (ts: number, maxAgeSeconds?: number) => (await store.asOf([{ series: 1, ts, maxAgeSeconds }]))[0];
  expect(await at(T0 - 1)).toBeNull();
  expect(await at(T0)).toEqual({ series: 1, ts: T0, value: 21.5 });
  expect(await at(T0 + 899)).toEqual({ series: 1, ts: T0, value: 21.5 });
  expect(await at(T0 + 900.5)).toEqual({ series: 1, ts: T0 + 900, value: 21.6 });
  expect(await at(T0 + 3 * BUCKET_SECONDS - 1)).toEqual({ series: 1, ts: T0 + 900, value: 21.6 });
  expect(await at(T0 + 3 * BUCKET_SECONDS - 1, 3600)).toBeNull();
  expect(await at(END, Number.POSITIVE_INFINITY)).toEqual({ series: 1, ts: T0 + 3 * BUCKET_SECONDS, value: 21.7 });
  expect(await at(-5)).toBeNull();
});

test("many such questions in any order are answered as one by one", async () => {
  const year = [...syntheticYear({ zones: 1, days: 90, seed: 2 })];
  await store.write(year, 1);
  const queries = Array.from({ length: 500 }, (_, i) => ({
    series: 1 + (i % 4),
    ts: (year[0]?.ts[0] ?? 0) - 1000 + ((i * 104_729) % (91 * 86_400)),
  }));
  const expected = queries.map((query) => {
    const source = year.find((each) => each.series === query.series);
    const index = source ? source.ts.findLastIndex((ts) => ts <= query.ts) : -1;
    if (!source || index < 0) return null;
    return { series: query.series, ts: source.ts[index], value: (source.v[index] ?? 0) / 10 ** source.decimals };
  });
  expect(await store.asOf(queries)).toEqual(expected);
});

test("extent, latest and revision follow the writes", async () => {
  expect([await store.rev([1]), await store.latest([1]), await store.extent([1])]).toEqual([[0], [null], [null]]);
  await store.write([slice(1, quarterHours(T0, 60))], 1);
  const lastTs = T0 + 60 * 86_400 - 900;
  expect(await store.extent([1, 2])).toEqual([{ firstTs: T0, lastTs, count: 5760 }, null]);
  expect(await store.rev([1, 2])).toEqual([1, 0]);
  await store.write([slice(1, [[T0 - 60, -5]]), slice(2, [[T0, 1]])], 2);
  expect(await store.extent([1])).toEqual([{ firstTs: T0 - 60, lastTs, count: 5761 }]);
  expect(await store.rev([1, 2])).toEqual([2, 1]);
  expect(await store.rev([2, 9, 1, 2])).toEqual([1, 0, 2, 1]);
  expect(await store.rev([])).toEqual([]);
});

test("a removed period is gone, the rest stays, and the revision never goes back", async () => {
  const rows = quarterHours(T0, 90);
  await store.write([slice(1, rows), slice(2, rows)], 1);
  const [from, to] = [T0 + 10 * 86_400, T0 + 75 * 86_400];
  await store.remove(1, from, to);
  expect(await readAll(1)).toEqual(rows.filter(([ts]) => ts < from || ts >= to));
  expect(await store.rev([1, 2])).toEqual([2, 1]);
  await store.remove(1);
  expect([await readAll(1), await store.rev([1]), await store.extent([1])]).toEqual([[], [0], [null]]);
  expect(await readAll(2)).toEqual(rows);
  await store.write([slice(1, [[T0, 1]])], 2);
  expect(await store.rev([1])).toEqual([4]);
});

test("a year of a typical office takes at most 1.3 bytes a reading on disk", async () => {
  const stats = await store.write(syntheticYear({ zones: 10, days: 365, seed: 4 }), 1);
  store.close();
  const size = statSync(file).size / stats.added;
  store = openTrendStore(file);
  expect(stats.added).toBeGreaterThan(690_000);
  expect(size).toBeLessThan(1.3);
});

test("temperatures read in tenths of °F and kept in thousandths of °C stay within that size too", async () => {
  const inFahrenheit = (each: TrendSlice): TrendSlice => ({
    ...each,
    v: each.v.map((v) => Math.round(((Math.round(v * 0.018 + 320) / 10 - 32) / 1.8) * 1000)),
  });
  const air = [...syntheticYear({ zones: 10, days: 365, seed: 4 })].filter(({ series }) => series % 3 === 1);
  const stats = await store.write(air.map(inFahrenheit), 1);
  store.close();
  const size = statSync(file).size / stats.added;
  store = openTrendStore(file);
  expect(size).toBeLessThan(1.3);
});

test("the event loop turns during a long write", async () => {
  const slices = [...syntheticYear({ zones: 12, days: 365, seed: 6 })];
  let turns = 0;
  const ticking = setInterval(() => turns++, 1);
  await store.write(slices, 1);
  clearInterval(ticking);
  expect(turns).toBeGreaterThan(1);
});

test("a file of another program or of a newer version is refused", () => {
  const foreign = path.join(folder, "foreign.db");
  new Database(foreign).exec("create table note (text)").close();
  expect(() => openTrendStore(foreign)).toThrow("not a trend store");
  const newer = path.join(folder, "newer.db");
  openTrendStore(newer).close();
  const db = new Database(newer);
  db.pragma("user_version = 99");
  db.close();
  expect(() => openTrendStore(newer)).toThrow("newer version");
});

test("times further apart than 32 bits of seconds are put in their order", async () => {
  const far = T0 + 2 ** 32 + 5;
  await store.write(
    [
      slice(5, [
        [T0, 1],
        [far, 2],
        [T0 + 6, 3],
      ]),
    ],
    1,
  );
  expect(await readAll(5, 0, far + 1)).toEqual([
    [T0, 1],
    [T0 + 6, 3],
    [far, 2],
  ]);
});
