import Database from "better-sqlite3";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readSlice } from "@/db/trends/read";
import { prepareSchema } from "@/db/trends/schema";
import { openTables } from "@/db/trends/tables";
import { openUndoLog } from "@/db/trends/undo-log";
import { writeSlices } from "@/db/trends/write";
import { rowsOf, slice, T0 } from "../../support/trend-samples";

const DAY = 86_400;

function memoryStore() {
  const db = new Database(":memory:");
  prepareSchema(db, ":memory:");
  return { db, tables: openTables(db), undoLog: openUndoLog(db) };
}

/** What a write should say of rows, by a map of what stood and a set of what the write gave itself. */
function expectedCounts(stood: ReadonlyMap<number, number>, rows: readonly [number, number][]) {
  const now = new Map(stood);
  const given = new Set<number>();
  const counts = { added: 0, changed: 0, same: 0, repeated: { same: 0, changed: 0 } };
  for (const [ts, v] of rows) {
    const equal = now.get(ts) === v;
    if (given.has(ts)) counts.repeated[equal ? "same" : "changed"]++;
    else if (!now.has(ts)) counts.added++;
    else counts[equal ? "same" : "changed"]++;
    now.set(ts, v);
    given.add(ts);
  }
  return { counts, now };
}

const row = fc.tuple(
  fc.integer({ min: 0, max: 40 }).map((i) => T0 + i * 2 * DAY),
  fc.integer({ min: 0, max: 2 }),
);

test("a time given twice in one write is told from one that stood before, however the write is cut into flushes", async () => {
  const eachOnce = fc.array(row, { maxLength: 30 }).map((rows): [number, number][] => [...new Map(rows)]);
  await fc.assert(
    fc.asyncProperty(eachOnce, fc.array(row, { maxLength: 60 }), async (before, rows) => {
      const store = memoryStore();
      await writeSlices(store, [slice(1, before)], 1);
      // One sample a flush: no two rows of the write meet before they are stored.
      const { chunksWritten, ...counts } = await writeSlices(store, [slice(1, rows)], 2, 1);
      const expected = expectedCounts(new Map(before), rows);
      expect(counts).toEqual(expected.counts);
      expect(rowsOf(readSlice(store.tables, 1, 0, T0 + 100 * DAY))).toEqual(
        [...expected.now].sort(([a], [b]) => a - b),
      );
      store.db.close();
    }),
    { numRuns: 150, seed: 9 },
  );
});

test("whatever the size of a flush, the counts add up to the samples and the same samples stand", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(row, { maxLength: 80 }), fc.integer({ min: 1, max: 30 }), async (rows, flushSamples) => {
      const store = memoryStore();
      const parts = [rows.slice(0, 25), rows.slice(25)].map((part) => slice(1, part));
      const { added, changed, same, repeated } = await writeSlices(store, parts, 1, flushSamples);
      expect({ added, changed, same }).toEqual({ added: new Map(rows).size, changed: 0, same: 0 });
      expect(added + repeated.same + repeated.changed).toBe(rows.length);
      expect(rowsOf(readSlice(store.tables, 1, 0, T0 + 100 * DAY))).toEqual(
        [...new Map(rows)].sort(([a], [b]) => a - b),
      );
      store.db.close();
    }),
    { numRuns: 150, seed: 10 },
  );
});

test("times centuries apart in one slice are kept, forwards and backwards", async () => {
  const far: [number, number][] = [
    [T0, 1],
    [T0 + 6_000_000_000, 2],
    [T0 + 900, 3],
    [T0 + 8_000_000_000, 4],
  ];
  const store = memoryStore();
  expect((await writeSlices(store, [slice(1, far)], 1)).added).toBe(4);
  const read = readSlice(store.tables, 1, 0, T0 + 9_000_000_000);
  expect(rowsOf(read)).toEqual([...far].sort(([a], [b]) => a - b));
  store.db.close();
});
