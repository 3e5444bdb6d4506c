import { spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import Database from "better-sqlite3";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { trendsImport } from "@/app/_cli/commands/trends-import";
import { withContext } from "@/app/_cli/context";
import { createBuilding } from "@/lib/services/buildings/save";
import { addZone } from "@/lib/services/zones/save";
import { seededRandom } from "@/lib/statistics/random";
import { buildingInputOf } from "@/test/factories/building";
import { storedChunks } from "@/test/support/stored-chunks";

const ZONES = 8;
const ROWS = 20_000;
const RULE = ["--building", "1", "--accept-proposals", "--json"];

let folder: string;
let file: string;
let expected: unknown[];
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "kill-import-"));
  file = path.join(folder, "months.csv");
  writeFileSync(file, trendCsv());
  mkdirSync(path.join(folder, "empty"));
  await inFolder("empty", () =>
    withContext(async (ctx) => {
      const id = createBuilding(ctx, buildingInputOf({ timeZone: "America/Phoenix" }));
      for (let zone = 1; zone <= ZONES; zone++) addZone(ctx, id, { code: `2-${zone}` });
    }),
  );
  cpSync(path.join(folder, "empty"), path.join(folder, "clean"), { recursive: true });
  expect(await inFolder("clean", () => trendsImport([file, ...RULE]))).toBe(0);
  expected = storedChunks(path.join(folder, "clean", "trend.db"));
}, 120_000);
afterEach(() => vi.unstubAllEnvs());
afterAll(() => rmSync(folder, { recursive: true }));

/** When the process is killed: how far it has come, and how long after that [ms]. */
const random = seededRandom(20_261_125);
const MOMENTS = [
  { after: "start", waitMs: Math.round(300 + random() * 1500) },
  { after: "running", waitMs: Math.round(random() * 600) },
  { after: "first samples", waitMs: 0 },
] as const;

test.each(MOMENTS)(
  "kill -9 $waitMs ms after $after: whole databases, no half import shown as done, and the same command again completes it",
  {
    timeout: 120_000,
  },
  async ({ after, waitMs }) => {
    const name = `${after}-${waitMs}`.replaceAll(/\W/g, "-");
    cpSync(path.join(folder, "empty"), path.join(folder, name), { recursive: true });
    await importAndKill(path.join(folder, name), after, waitMs);

    const chunks = countOf(path.join(folder, name, "trend.db"), "chunk");
    for (const database of ["app.db", "trend.db"]) {
      const db = new Database(path.join(folder, name, database));
      expect(db.pragma("integrity_check", { simple: true }), database).toBe("ok");
      expect(db.pragma("foreign_key_check"), database).toEqual([]);
      db.close();
    }
    const states = statesIn(path.join(folder, name));
    if (states.includes("done")) expect(storedChunks(path.join(folder, name, "trend.db"))).toEqual(expected);
    if (after === "first samples") expect(chunks).toBeGreaterThan(0);
    if (chunks < expected.length) expect(states).not.toContain("done");

    expect(await inFolder(name, () => trendsImport([file, ...RULE]))).toBe(0);
    expect(storedChunks(path.join(folder, name, "trend.db"))).toEqual(expected);
    expect(statesIn(path.join(folder, name)).filter((state) => state !== "interrupted")).toEqual(["done"]);
  },
);

async function importAndKill(dataFolder: string, after: string, waitMs: number): Promise<void> {
  const child = spawn(process.execPath, ["--import", "tsx", "app/_cli/main.ts", "trends", "import", file, ...RULE], {
    env: { ...process.env, SETPOINT_LEDGER_DATA: dataFolder },
    stdio: "ignore",
  });
  const exited = once(child, "exit");
  const reached = {
    start: () => true,
    running: () => statesIn(dataFolder).includes("running"),
    "first samples": () => countOf(path.join(dataFolder, "trend.db"), "chunk") > 0,
  }[after];
  while (!reached?.() && child.exitCode === null) await wait(10);
  await wait(waitMs);
  child.kill("SIGKILL");
  await exited;
}

async function inFolder<T>(name: string, work: () => Promise<T>): Promise<T> {
  vi.stubEnv("SETPOINT_LEDGER_DATA", path.join(folder, name));
  const write = vi.spyOn(process.stdout, "write").mockImplementation(() => true);
  try {
    return await work();
  } finally {
    write.mockRestore();
  }
}

function statesIn(dataFolder: string): string[] {
  const db = new Database(path.join(dataFolder, "app.db"), { readonly: true });
  const states = db.prepare("select state from import_run order by id").pluck().all() as string[];
  db.close();
  return states;
}

function countOf(database: string, table: string): number {
  const db = new Database(database, { readonly: true });
  const count = db.prepare(`select count(*) from ${table}`).pluck().get() as number;
  db.close();
  return count;
}

/** Seven months of quarter hours: air temperature and airflow of each zone. */
function trendCsv(): string {
  const draw = seededRandom(7);
  const names = Array.from({ length: ZONES }, (_, i) => [`VAV-2-${i + 1} ZN-T (°F)`, `VAV-2-${i + 1} Flow (cfm)`]);
  const lines = [["Timestamp", ...names.flat()].join(",")];
  for (let row = 0; row < ROWS; row++) {
    const stamp = new Date(Date.UTC(2025, 0, 1) + row * 900_000).toISOString().slice(0, 16).replace("T", " ");
    const cells = names.flatMap(() => [(70 + draw() * 6).toFixed(1), String(Math.round(200 + draw() * 300))]);
    lines.push([stamp, ...cells].join(","));
  }
  return `${lines.join("\n")}\n`;
}
