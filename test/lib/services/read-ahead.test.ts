import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { listPoints } from "@/db/queries/points";
import { openUploadFolder } from "@/db/uploads";
import { createBuilding } from "@/lib/services/buildings/save";
import { importTrendFile } from "@/lib/services/trend-imports/import-file";
import { ReadAhead } from "@/lib/services/trend-imports/read-ahead";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { testContext } from "@/test/support/database";

/** Large enough to be read while its copy is made. */
const ROWS = 400_000;
const STEP_SECONDS = 300;
const START = Date.UTC(2022, 0, 1);
const folder = mkdtempSync(path.join(tmpdir(), "read-ahead-test-"));
const file = path.join(folder, "large.csv");
const RULE = { acceptProposals: true, answers: {} };

beforeAll(() => {
  const rows = Array.from({ length: ROWS }, (_, i) => {
    const stamp = new Date(START + i * STEP_SECONDS * 1000).toISOString();
    return `${stamp},VAV-1 ZN-T (°F),${(70 + (i % 37) / 10).toFixed(1)}`;
  });
  writeFileSync(file, `Time,Point Name,Value\n${rows.join("\n")}\n`);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function office() {
  const ctx = testContext({ uploads: openUploadFolder(path.join(folder, "kept")) });
  const buildingId = createBuilding(ctx, buildingInputOf());
  addZone(ctx, buildingId, { code: "VAV-1", minimumAirflowM3ps: null });
  return { ctx, buildingId };
}

test("a large file is stored as its bytes are, and is known by them when it comes again", async () => {
  const { ctx, buildingId } = office();
  const report = await importTrendFile(ctx, buildingId, { name: "large.csv", bytes: file }, RULE);
  expect(report).toMatchObject({ outcome: "imported", rows: { rowsInFile: ROWS, accepted: ROWS } });
  expect(report.samples?.added).toBe(ROWS);
  const again = await importTrendFile(ctx, buildingId, { name: "large.csv", bytes: file }, RULE);
  expect(again.outcome).toBe("unchanged");

  const byBytes = office();
  await importTrendFile(byBytes.ctx, byBytes.buildingId, { name: "large.csv", bytes: readFileSync(file) }, RULE);
  const samplesOf = async ({ ctx: context, buildingId: id }: ReturnType<typeof office>) => {
    const series = listPoints(context.db, id).map((point) => point.id);
    const all = [];
    for await (const slice of context.trends.read(series, 0, Number.POSITIVE_INFINITY))
      all.push({ ts: [...slice.ts], v: [...slice.v] });
    return all;
  };
  expect(await samplesOf({ ctx, buildingId })).toEqual(await samplesOf(byBytes));
});

test("what was read of a file that is written to meanwhile does not count", async () => {
  const changing = path.join(folder, "changing.csv");
  writeFileSync(changing, "Time,Point Name,Value\n2026-07-06T08:00:00Z,VAV-1 ZN-T (°F),71.5\n");
  const about = { fileName: "changing.csv", timeZone: "America/New_York" };
  const calm = await new ReadAhead(changing, about).finish(() => {});
  expect(calm?.result.rows.accepted).toBe(1);
  const ahead = new ReadAhead(changing, about);
  appendFileSync(changing, "2026-07-06T08:15:00Z,VAV-1 ZN-T (°F),71.6\n");
  expect(await ahead.finish(() => {})).toBeNull();
  const other = new ReadAhead(changing, about);
  rmSync(changing);
  expect(await other.finish(() => {})).toBeNull();
});

test("a reading that nobody waits for ends at the next part, and tells who asks", async () => {
  const ahead = new ReadAhead(file, { fileName: "large.csv", timeZone: "America/New_York" });
  ahead.giveUp();
  await expect(ahead.finish(() => {})).rejects.toThrow();
});
