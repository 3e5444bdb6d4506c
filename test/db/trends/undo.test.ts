import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { BUCKET_SECONDS } from "@/db/trends/bucket";
import { type OpenTrendStore, openTrendStore } from "@/db/trends/store";
import { storedChunks } from "../../support/stored-chunks";
import { syntheticYear } from "../../support/synthetic-trends";
import { regular, slice, T0 } from "../../support/trend-samples";

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

const days = (start: number, count: number, add = 0) =>
  regular(start, 900, count * 96, (i) => 210 + add + ((i * 7) % 11));
const state = async () => ({
  chunks: storedChunks(file),
  extent: await store.extent([1, 2, 3]),
  latest: await store.latest([1, 2, 3]),
});

test("undoing a run puts every chunk back byte by byte, and raises the revisions", async () => {
  await store.write([slice(1, days(T0, 60)), slice(2, days(T0, 40))], 1);
  const before = await state();
  await store.write(
    [slice(1, days(T0 + 30 * 86_400, 90, 5)), slice(2, [[T0 + 450, 21_555]], 3), slice(3, days(T0, 9))],
    2,
  );
  expect(await state()).not.toEqual(before);
  await store.undo(2);
  expect(await state()).toEqual(before);
  expect(await store.rev([1, 2, 3])).toEqual([3, 3, 0]);
});

test("undoing the only import leaves an empty store", async () => {
  await store.write(syntheticYear({ zones: 3, days: 365, seed: 1 }), 1);
  await store.undo(1);
  expect(storedChunks(file)).toEqual([]);
  expect(await store.extent([1])).toEqual([null]);
});

test("several writes of one run are undone together", async () => {
  await store.write([slice(1, days(T0, 10))], 1);
  const before = await state();
  await store.write([slice(1, days(T0, 10, 1))], 2);
  await store.write([slice(1, days(T0, 10, 2))], 2);
  await store.undo(2);
  expect(await state()).toEqual(before);
});

test("undoing a run that changed nothing, is unknown or was undone does nothing", async () => {
  await store.write([slice(1, days(T0, 10))], 1);
  await store.write([slice(1, days(T0, 10))], 2);
  const before = await state();
  await store.undo(2);
  await store.undo(77);
  expect(await state()).toEqual(before);
  await store.undo(1);
  await store.undo(1);
  expect(storedChunks(file)).toEqual([]);
});

test("a run is not undone while a later one stands on it, and can be once that is undone", async () => {
  await store.write([slice(1, days(T0, 10))], 1);
  await store.write([slice(1, days(T0 + 5 * 86_400, 10))], 2);
  const before = await state();
  await expect(store.undo(1)).rejects.toThrow("run 1 cannot be undone: run 2 has written to the same trends since");
  expect(await state()).toEqual(before);
  await store.undo(2);
  await store.undo(1);
  expect(storedChunks(file)).toEqual([]);
});

test("a run does not go on over what a later run has written", async () => {
  await store.write([slice(1, days(T0, 10))], 1);
  await store.write([slice(1, days(T0, 10, 1))], 2);
  await expect(store.write([slice(1, days(T0, 10, 2))], 1)).rejects.toThrow(
    "run 2 has written to what run 1 wrote before",
  );
});

test("the last five runs can be undone and older ones say that they cannot", async () => {
  for (let run = 1; run <= 6; run++) await store.write([slice(run, days(T0, 2))], run);
  await expect(store.undo(1)).rejects.toThrow("run 1 can no longer be undone");
  for (let run = 6; run >= 2; run--) await store.undo(run);
  expect(await store.extent([1, 2, 6])).toEqual([expect.anything(), null, null]);
});

test("a removed series does not come back by undoing, and the rest of the run is still undone", async () => {
  await store.write([slice(1, days(T0, 60)), slice(2, days(T0, 60))], 1);
  await store.write([slice(1, days(T0, 60, 3)), slice(2, days(T0, 60, 3))], 2);
  await store.remove(1);
  await store.undo(2);
  expect(await store.extent([1])).toEqual([null]);
  expect(await store.asOf([{ series: 2, ts: T0 }])).toEqual([{ series: 2, ts: T0, value: 21 }]);
});

test("a run of which a part was removed says that it can no longer be undone", async () => {
  await store.write([slice(1, days(T0, 60))], 1);
  await store.remove(1, T0 + 86_400, T0 + 2 * 86_400);
  await expect(store.undo(1)).rejects.toThrow("can no longer be undone");
});

test("undoing brings the decimals back as well", async () => {
  await store.write(
    [
      slice(1, [
        [T0, 215],
        [T0 + 2 * BUCKET_SECONDS, 220],
      ]),
    ],
    1,
  );
  await store.write([slice(1, [[T0, 21_501]], 3)], 2);
  await store.undo(2);
  for await (const read of store.read([1], 0, T0 * 2)) expect([read.decimals, ...read.v]).toEqual([1, 215, 220]);
});
