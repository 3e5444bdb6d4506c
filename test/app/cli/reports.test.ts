import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { withContext } from "@/app/_cli/context";
import { createBuilding } from "@/lib/services/buildings/save";
import { readComfortReports } from "@/lib/services/comfort-reports/list";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { runCommand } from "@/test/support/run-command";

let folder: string;
const at = (name: string) => path.join(folder, name);
const run = (...args: string[]) => runCommand(at("data"), ...args);

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "reports-"));
  writeFileSync(at("past.csv"), "date,zone,text\n2024-07-01,2-14,freezing\n2024-07-02,2-14,lamp\n");
  vi.stubEnv("SETPOINT_LEDGER_DATA", at("data"));
  await withContext(async (ctx) => {
    addZone(ctx, createBuilding(ctx, buildingInputOf()), { code: "2-14" });
  });
});
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

test("reports add and import put reports on record and say what became of each row", { timeout: 60_000 }, async () => {
  const added = await run("reports", "add", "--building", "1", "--zone", "2-14", "--vote", "slightly cool");
  expect([added.code, added.out]).toEqual([0, "report 1\n"]);
  const wrong = await run("reports", "add", "--building", "1", "--zone", "2-14", "--vote", "tepid");
  expect(wrong.code).toBe(1);
  expect(wrong.complaint).toContain("as a word of the scale");
  const imported = await run("reports", "import", at("past.csv"), "--building", "1");
  expect(imported.code, imported.complaint).toBe(3);
  expect(imported.out).toContain("line 2: repaired, cold: no time: noon was taken");
  expect(imported.out).toContain("line 3: ignored, other");
  expect(imported.out).toContain("1 of 2 rows taken");
  const reports = await withContext(async (ctx) => readComfortReports(ctx, 1));
  expect(reports.map(({ thermalSensation, preference, origin }) => [thermalSensation, preference, origin])).toEqual([
    [-1, "warmer", "command-line"],
    [-2, "warmer", "import"],
  ]);
});
