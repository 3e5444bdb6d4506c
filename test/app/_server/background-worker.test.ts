import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type BackgroundWorker, startBackgroundWorker } from "@/app/_server/background-worker";
import { openStores, type Stores } from "@/app/_server/open-stores";
import { createBuilding } from "@/lib/services/buildings/save";
import type { Context } from "@/lib/services/context";
import { registerDevice } from "@/lib/services/devices/register";
import { readImportHistory, readImportRun } from "@/lib/services/imports/history";
import { readKept } from "@/lib/services/kept/read-kept";
import { importPlugLog } from "@/lib/services/plug-logs/import";
import { readPlugLogView } from "@/lib/services/plug-logs/read";
import { confirmMapping } from "@/lib/services/trend-imports/confirm";
import { queueTrendImports } from "@/lib/services/trend-imports/queue";
import { receiveTrendFile } from "@/lib/services/trend-imports/receive";
import { addZone } from "@/lib/services/zones/save";
import { ZONES } from "@/lib/services/zones/shown";
import { buildingInputOf } from "@/test/factories/building";
import { heaterInput } from "@/test/factories/office";
import { wideCsv } from "@/test/factories/trend-csv";

let folder: string;
let stores: Stores;
let ctx: Context;
let worker: BackgroundWorker | undefined;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "background-worker-"));
  stores = openStores(folder);
  ctx = { ...stores, actor: { kind: "command-line", name: "test" }, now: Date.now() };
});
afterEach(async () => {
  await worker?.stop();
  rmSync(folder, { recursive: true });
});

const start = (entry?: string): BackgroundWorker => {
  worker = startBackgroundWorker(folder, stores.db, entry);
  return worker;
};

async function receive(buildingId: number, name: string, column: string): Promise<number> {
  const kept = await ctx.uploads.saveFrom([wideCsv({ [column]: [72, 71, 70] })]);
  return receiveTrendFile(ctx, buildingId, { fileName: name, ...kept }).run.id;
}

const runOf = (buildingId: number, id: number) => readImportRun(ctx, buildingId, id).run;

const WAIT = { timeout: 100_000, interval: 30 };

const zonesKept = (buildingId: number) =>
  (ctx.results.find(buildingId, "shown/zones")?.result as { zones: unknown[] } | undefined)?.zones.length;

async function until(reached: () => boolean): Promise<void> {
  await vi.waitFor(() => expect(reached()).toBe(true), WAIT);
}

test("a thread reads what is received, and stores it once it is mapped", { timeout: 120_000 }, async () => {
  const buildingId = createBuilding(ctx, buildingInputOf());
  const zoneId = addZone(ctx, buildingId, { code: "2-14" });
  const id = await receive(buildingId, "a.csv", "2-14 ZN-T (°F)");
  const { poke } = start();
  await until(() => runOf(buildingId, id).state === "waiting");
  const choice = { skip: false as const, kind: "zone-air-temp" as const, zoneId, unit: null };
  queueTrendImports(ctx, buildingId, confirmMapping(ctx, buildingId, { points: { "2-14 ZN-T": choice } }));
  poke();
  await until(() => runOf(buildingId, id).state === "done");
  expect(runOf(buildingId, id)).toMatchObject({ samplesAdded: 3, rowsInFile: 3, owner: null, readingsRead: 3 });
});

test("a worker that breaks down leaves its file interrupted, with the reason, and the next worker goes on", {
  timeout: 120_000,
}, async () => {
  const complaint = vi.spyOn(console, "error").mockImplementation(() => {});
  const buildingId = createBuilding(ctx, buildingInputOf());
  const id = await receive(buildingId, "a.csv", "2-14 ZN-T (°F)");
  start("test/support/breaking-worker.ts");
  await until(() => runOf(buildingId, id).state === "interrupted");
  expect(runOf(buildingId, id).message).toBe(
    "The import broke down in the middle of this file. Nothing of it is stored.",
  );
  expect(complaint).toHaveBeenCalledWith(
    "The background thread broke down:",
    expect.objectContaining({ message: "out of memory" }),
  );
  const second = await receive(buildingId, "b.csv", "2-15 ZN-T (°F)");
  await until(() => runOf(buildingId, second).state === "interrupted");
});

test("works out what a page asks for while the page goes on, and a whole building once its import is done", {
  timeout: 120_000,
}, async () => {
  const buildingId = createBuilding(ctx, buildingInputOf());
  const zoneId = addZone(ctx, buildingId, { code: "2-14" });
  const { poke, analyst } = start();
  const asked: Context = { ...ctx, analyst };
  expect((await readKept(asked, buildingId, ZONES)).behind).not.toBeNull();
  await vi.waitFor(async () => expect((await readKept(asked, buildingId, ZONES)).behind).toBeNull(), WAIT);
  expect((await readKept(asked, buildingId, ZONES)).result).toEqual({ zones: [], record: null });

  const id = await receive(buildingId, "a.csv", "2-14 ZN-T (°F)");
  poke();
  await until(() => runOf(buildingId, id).state === "waiting");
  const choice = { skip: false as const, kind: "zone-air-temp" as const, zoneId, unit: null };
  queueTrendImports(ctx, buildingId, confirmMapping(ctx, buildingId, { points: { "2-14 ZN-T": choice } }));
  const held = await readKept(asked, buildingId, ZONES);
  expect(held.result).toEqual({ zones: [], record: null });
  poke();
  // Nobody asks.
  await until(() => zonesKept(buildingId) === 1);
  expect((await readKept(asked, buildingId, ZONES)).behind).toBeNull();
});

test("a breakdown in the middle of a result is said on the page, which waits no longer for it", {
  timeout: 120_000,
}, async () => {
  vi.spyOn(console, "error").mockImplementation(() => {});
  const buildingId = createBuilding(ctx, buildingInputOf());
  const { analyst } = start("test/support/analysis-breaking-thread.ts");
  const asked: Context = { ...ctx, analyst };
  await vi.waitFor(async () => {
    const { behind } = await readKept(asked, buildingId, ZONES);
    expect(behind?.failure?.message).toContain("broke down");
  }, WAIT);
  expect((await readKept(asked, buildingId, ZONES)).result).toBeNull();
});

test("a server's worker and two commands at once bring every file through, each once", {
  timeout: 180_000,
}, async () => {
  const buildingId = createBuilding(ctx, buildingInputOf({ timeZone: "America/Phoenix" }));
  for (const code of ["2-14", "2-15"]) addZone(ctx, buildingId, { code });
  const files = ["2-14", "2-15"].map((zone) => {
    const file = path.join(folder, `${zone}.csv`);
    const temps = Array.from({ length: 4_000 }, (_, i) => 68 + (i % 80) / 10);
    writeFileSync(file, wideCsv({ [`${zone} ZN-T (°F)`]: temps }));
    return file;
  });
  start();
  const exits = await Promise.all(files.map((file) => importByCommand([file, files[0] as string], buildingId)));
  expect(exits).toEqual([0, 0]);
  const runs = readImportHistory(ctx, buildingId);
  expect(runs.map(({ fileName, state, samplesAdded }) => [fileName, state, samplesAdded]).sort()).toEqual([
    ["2-14.csv", "done", 4_000],
    ["2-15.csv", "done", 4_000],
  ]);
});

async function importByCommand(files: readonly string[], buildingId: number): Promise<number | null> {
  const rule = ["--building", String(buildingId), "--accept-proposals", "--json"];
  const args = ["--import", "tsx", "app/_cli/main.ts", "trends", "import", ...files, ...rule];
  const child = spawn(process.execPath, args, {
    env: { ...process.env, SETPOINT_LEDGER_DATA: folder },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const [code] = await once(child, "exit");
  return code;
}

test("a thread deletes the readings of plug loggers that were kept for long enough", { timeout: 120_000 }, async () => {
  const buildingId = createBuilding(ctx, buildingInputOf());
  addZone(ctx, buildingId, { code: "2-14" });
  const deviceId = registerDevice(ctx, buildingId, heaterInput({ deskCode: "" }));
  const bytes = new TextEncoder().encode("time,W\n2025-07-01 10:00,5\n2025-07-01 10:01,6\n");
  const before = { ...ctx, now: ctx.now - 31 * 86_400_000 };
  const outcome = await importPlugLog(before, buildingId, deviceId, { name: "log.csv", bytes });
  if (outcome.state !== "imported") throw new Error(outcome.message);
  const log = () => readPlugLogView(ctx, buildingId, deviceId, outcome.logId).log;
  expect(ctx.uploads.read(log().sha256)).not.toBeNull();
  start();
  await until(() => log().rawDeletedAtMs !== null);
  expect(ctx.uploads.read(log().sha256)).toBeNull();
});
