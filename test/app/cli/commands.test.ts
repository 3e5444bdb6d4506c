import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { withContext } from "@/app/_cli/context";
import { createBuilding } from "@/lib/services/buildings/save";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { wideCsv } from "@/test/factories/trend-csv";
import { runCommand } from "@/test/support/run-command";

let folder: string;
const at = (name: string) => path.join(folder, name);
const run = (...args: string[]) => runCommand(at("data"), ...args);

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "commands-"));
  writeFileSync(at("week.csv"), wideCsv({ "VAV-2-14 ZN-T (°F)": [71, 71.5, 72], "VAV-2-14 RAD-O (%)": [0, 0, 0] }));
  writeFileSync(at("minutes.txt"), "Minutes of the safety meeting\n\nPresent: everyone.\n");
  vi.stubEnv("SETPOINT_LEDGER_DATA", at("data"));
  await withContext(async (ctx) => {
    const id = createBuilding(ctx, buildingInputOf({ presentCoolingSetpointC: 21.5 }));
    addZone(ctx, id, { code: "2-14", floorAreaM2: 120 });
  });
  vi.unstubAllEnvs();
});
afterAll(() => rmSync(folder, { recursive: true }));

test("trends import asks about new points, imports what is proposed, and refuses a text, each with its exit code", {
  timeout: 60_000,
}, async () => {
  const asked = await run("trends", "import", at("week.csv"), "--building", "1", "--json");
  expect(asked.code, asked.complaint).toBe(3);
  const [waiting] = JSON.parse(asked.out).files;
  expect(waiting).toMatchObject({ outcome: "asked", rows: null, samples: null });
  expect(waiting.open.map(({ name }: { name: string }) => name).sort()).toEqual(["VAV-2-14 RAD-O", "VAV-2-14 ZN-T"]);

  const mixed = await run(
    "trends",
    "import",
    at("week.csv"),
    at("minutes.txt"),
    "--building",
    "1",
    "--accept-proposals",
    "--json",
  );
  expect(mixed.code, mixed.complaint).toBe(4);
  const [imported, refused] = JSON.parse(mixed.out).files;
  expect(imported).toMatchObject({
    outcome: "imported",
    rows: { rowsInFile: 3, accepted: 3 },
    samples: { added: 3, changed: 0, same: 0 },
    mapped: [{ name: "VAV-2-14 ZN-T", kind: "zone-air-temp", zone: "2-14" }],
    leftOut: [{ name: "VAV-2-14 RAD-O" }],
  });
  expect(refused).toMatchObject({ outcome: "refused", message: expect.stringContaining("not a trend export") });

  // What was mapped and left out is known now: no proposal is needed for the next file.
  writeFileSync(
    at("next.csv"),
    wideCsv({ "VAV-2-14 ZN-T (°F)": [71, 71.5, 72, 73], "VAV-2-14 RAD-O (%)": [0, 0, 0, 0] }),
  );
  const plain = await run("trends", "import", at("week.csv"), at("next.csv"), "--building", "1");
  expect(plain.code, plain.complaint).toBe(0);
  expect(plain.out).toContain("week.csv: unchanged.");
  expect(plain.out).toContain("next.csv: imported. 1 sample added, 0 changed, 3 as they were.");
  expect(plain.out).toContain("rows 4 = 4 accepted + 0 repaired + 0 held back + 0 rejected + 0 ignored");
  expect(plain.out).toContain("left out: VAV-2-14 RAD-O: left out before");
});

test("building cost prints the figure with its parts", { timeout: 30_000 }, async () => {
  const { code, out, complaint } = await run("building", "cost", "1", "--json");
  expect(code, complaint).toBe(0);
  const cost = JSON.parse(out);
  expect(cost).toMatchObject({ status: "ok", tier: { number: 0 }, building: { name: "Alder Court", currency: "USD" } });
  expect(cost.headline.p10).toBeLessThan(cost.headline.p90);
  const parts = cost.components.reduce((sum: number, each: { contribution: number }) => sum + each.contribution, 0);
  expect(parts).toBeCloseTo(cost.headline.p50, 6);
  expect(cost.findings[0].what).not.toBe("");
});

test("export writes every file into the folder given", { timeout: 30_000 }, async () => {
  const { code, out, complaint } = await run("export", "1", "--out", at("out"), "--json");
  expect(code, complaint).toBe(0);
  expect(readdirSync(at("out")).sort()).toEqual([...JSON.parse(out).files].sort());
  expect(readFileSync(at("out/zones.csv"), "utf8")).toContain("2-14");
});

test("a wrong call is told with the usage, and a building that is not there in words", {
  timeout: 60_000,
}, async () => {
  const usage = await run("trends", "import", at("week.csv"), at("no-such.csv"), "--building", "1");
  expect(usage).toMatchObject({ code: 2, out: "" });
  expect(usage.complaint).toMatch(/cannot be read[\s\S]*usage: npm run cli -- trends import/);
  const missing = await run("building", "cost", "77");
  expect(missing).toEqual({ code: 1, out: "", complaint: "There is no building number 77.\n" });
});
