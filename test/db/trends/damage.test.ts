import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { chunkIdAt } from "@/db/trends/bucket";
import { type OpenTrendStore, openTrendStore } from "@/db/trends/store";
import { regular, rowsOf, slice, T0 } from "../../support/trend-samples";

let folder: string;
let store: OpenTrendStore;
const DAMAGED = T0 + 30 * 86_400;
const NAMED = "the stored trend of series 7 from 2024-01-18 to 2024-02-15 (UTC) does not agree with its checksum";

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "trends-"));
  const file = path.join(folder, "trend.db");
  store = openTrendStore(file);
  await store.write(
    [
      slice(
        7,
        regular(T0, 900, 90 * 96, (i) => 210 + ((i * i) % 13)),
      ),
    ],
    1,
  );
  const db = new Database(file);
  const id = chunkIdAt(7, DAMAGED);
  const data = db.prepare("select data from chunk where id = ?").pluck().get(id) as Buffer;
  data[200] = (data[200] ?? 0) ^ 1;
  db.prepare("update chunk set data = ? where id = ?").run(data, id);
  db.close();
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true });
});

const readAll = async (from: number, to: number) => {
  for await (const read of store.read([7], from, to)) return rowsOf(read);
};

test("a damaged chunk is named with its series and period by whatever meets it", async () => {
  await expect(readAll(0, T0 * 2)).rejects.toThrow(NAMED);
  await expect(store.asOf([{ series: 7, ts: DAMAGED }])).rejects.toThrow(NAMED);
  await expect(store.write([slice(7, [[DAMAGED, 1]])], 2)).rejects.toThrow(NAMED);
});

test("the other periods stay readable, and removing the damaged one and importing again heals it", async () => {
  expect(await readAll(T0, T0 + 86_400)).toHaveLength(96);
  await store.remove(7, Date.UTC(2024, 0, 18) / 1000, Date.UTC(2024, 1, 15) / 1000);
  await store.write(
    [
      slice(
        7,
        regular(T0, 900, 90 * 96, (i) => 210 + ((i * i) % 13)),
      ),
    ],
    2,
  );
  expect(await readAll(0, T0 * 2)).toHaveLength(90 * 96);
});
