import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openTrendStore } from "@/db/trends/store";
import { seededRandom } from "@/lib/statistics/random";
import { runAndKill } from "../../support/killed-process";
import { storedChunks } from "../../support/stored-chunks";
import { syntheticYear } from "../../support/synthetic-trends";

const TRIALS = Number(process.env.KILL_TRIALS ?? 8);
const SIZE = { zones: 24, days: 365 };

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "kill-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

test("after kill -9 in mid-import the store is whole, and the same import again ends as a clean one", {
  timeout: 240_000,
}, async () => {
  const slices = [...syntheticYear({ ...SIZE, seed: 7 })];
  const clean = path.join(folder, "clean.db");
  const opened = openTrendStore(clean);
  await opened.write(slices, 1);
  opened.close();
  const expected = storedChunks(clean);

  const random = seededRandom(TRIALS);
  const found = new Set<string>();
  for (let trial = 0; trial < TRIALS; trial++) {
    const file = path.join(folder, `trend-${trial}.db`);
    await runAndKill("import-until-killed", [file, String(SIZE.zones), String(SIZE.days)], 20 + random() * 400);

    const db = new Database(file);
    expect(db.pragma("integrity_check", { simple: true })).toBe("ok");
    const chunks = db.prepare("select count(*) from chunk").pluck().get() as number;
    expect(seriesOutOfLine(db)).toEqual([]);
    db.close();
    found.add(chunks === 0 ? "empty" : chunks === expected.length ? "complete" : "in part");

    const store = openTrendStore(file);
    await store.write(slices, 1_000_000);
    store.close();
    expect(storedChunks(file)).toEqual(expected);
  }
  expect([...found], "no trial was killed in mid-import: change the times").toContain("in part");
});

/** Series whose row does not agree with their chunks. */
function seriesOutOfLine(db: Database.Database): unknown[] {
  return db
    .prepare(
      `select series.id from series left join chunk on chunk.id / 4096 = series.id group by series.id
       having series.n <> coalesce(sum(chunk.n), 0) or series.first_ts is not min(t0) or series.last_ts is not max(t1)`,
    )
    .all();
}
