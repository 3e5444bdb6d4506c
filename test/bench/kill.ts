import { spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import Database from "better-sqlite3";
import { seededRandom } from "@/lib/statistics/random";
import { storedChunks } from "../support/stored-chunks";
import { agree } from "./agree";
import { printCircumstances } from "./circumstances";
import { makeDataFolder } from "./data/data-folder";
import { writeTrendFile } from "./data/trend-file";
import { importByCommand } from "./import-command";
import { line, target } from "./targets";

const ZONES = 20;

/**
 * kill -9 of the command line's import at moments drawn by a seed: `kill 50` for fifty. A third lie anywhere in the life
 * of the process, a third between the claim of the run and its end, a third after the first chunks are there. Then both databases have to be whole, no
 * half import may be shown as done, and the same command again has to end in the chunks of a clean import.
 */
export async function benchKill([trials = "50"]: string[]): Promise<void> {
  printCircumstances();
  const folder = mkdtempSync(path.join(process.env.BENCH_FOLDER ?? tmpdir(), "bench-kill-"));
  try {
    const empty = path.join(folder, "empty");
    makeDataFolder(empty, ZONES);
    const shape = { layout: "wide", zones: ZONES, fromDay: 0, toDay: 120 } as const;
    const { file, bytes, readings } = writeTrendFile(path.join(folder, "months.csv"), shape);
    const clean = path.join(folder, "clean");
    cpSync(empty, clean, { recursive: true });
    const life = await importAndKill(clean, file, null);
    agree("end of the clean import", statesIn(clean).join(), "done");
    const expected = JSON.stringify(storedChunks(path.join(clean, "trend.db")));
    line(
      `\n${readings} readings, ${(bytes / 1e6).toFixed(1)} MB; a clean import takes ${life.start.toFixed(0)} ms, ` +
        `${life.running.toFixed(0)} ms of it after its claim and ${life.samples.toFixed(0)} ms after its first chunks; ${trials} kills`,
    );
    const random = seededRandom(Number(trials));
    const seen: Record<string, number> = {};
    let faults = 0;
    for (let trial = 0; trial < Number(trials); trial++) {
      const data = path.join(folder, `trial-${trial}`);
      cpSync(empty, data, { recursive: true });
      const after = PHASES[trial % PHASES.length] as Phase;
      const moment = { after, waitMs: random() * life[after] };
      await importAndKill(data, file, moment);
      const found = await faultsOf(data, file, expected);
      for (const fault of found.faults) line(`  ${moment.after} + ${moment.waitMs.toFixed(0)} ms: ${fault}`);
      faults += found.faults.length;
      seen[found.left] = (seen[found.left] ?? 0) + 1;
      rmSync(data, { recursive: true });
    }
    line(
      `  found after the kill: ${Object.entries(seen)
        .map(([left, times]) => `${left} ${times}`)
        .join(", ")}`,
    );
    target({ what: `faults after ${trials} kills`, figure: faults, limit: 0, unit: "faults" });
    target({
      what: "kills that left samples in part",
      figure: seen["samples in part"] ?? 0,
      limit: 1,
      atLeast: true,
      unit: "kills",
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const PHASES = ["start", "running", "samples"] as const;
type Phase = (typeof PHASES)[number];

const HAS_BEGUN: Record<Phase, (data: string) => boolean> = {
  start: () => true,
  running: (data) => statesIn(data).includes("running"),
  samples: (data) => chunkCount(data) > 0,
};

/** Runs the command and kills it at the moment, or lets it end; how long it lived from the begin of each phase [ms]. */
async function importAndKill(data: string, file: string, moment: { after: Phase; waitMs: number } | null) {
  const rule = ["--building", "1", "--accept-proposals", "--json"];
  const begun = { start: performance.now(), running: Number.NaN, samples: Number.NaN };
  const child = spawn(process.execPath, ["--import", "tsx", "app/_cli/main.ts", "trends", "import", file, ...rule], {
    env: { ...process.env, SETPOINT_LEDGER_DATA: data },
    stdio: "ignore",
  });
  const exited = once(child, "exit");
  for (const phase of PHASES) {
    while (child.exitCode === null && !HAS_BEGUN[phase](data)) await wait(5);
    begun[phase] = performance.now();
    if (moment?.after === phase) break;
  }
  if (moment) {
    await Promise.race([wait(moment.waitMs), exited]);
    child.kill("SIGKILL");
  }
  await exited;
  const end = performance.now();
  return { start: end - begun.start, running: end - begun.running, samples: end - begun.samples };
}

/** What is wrong after a kill, and what it left behind; imports the file again. */
async function faultsOf(data: string, file: string, expected: string): Promise<{ faults: string[]; left: string }> {
  const faults: string[] = [];
  for (const database of ["app.db", "trend.db"]) {
    const db = new Database(path.join(data, database));
    const verdict = db.pragma("integrity_check", { simple: true });
    if (verdict !== "ok") faults.push(`${database}: ${String(verdict)}`);
    if ((db.pragma("foreign_key_check") as unknown[]).length > 0)
      faults.push(`${database}: a foreign key leads nowhere`);
    db.close();
  }
  const chunks = storedChunks(path.join(data, "trend.db"));
  const whole = JSON.stringify(chunks) === expected;
  if (statesIn(data).includes("done") && !whole)
    faults.push("an import is shown as done, and its samples are not all there");
  const again = await importByCommand(data, file);
  if (again.outcome !== "imported" && !(whole && again.outcome === "unchanged")) faults.push(`again: ${again.message}`);
  if (JSON.stringify(storedChunks(path.join(data, "trend.db"))) !== expected)
    faults.push("the repeated import gives other chunks");
  const left = statesIn(data).filter((state) => state !== "interrupted");
  if (left.join() !== "done") faults.push(`after the repeated import the states are ${statesIn(data).join()}`);
  return { faults, left: whole ? "all samples" : chunks.length > 0 ? "samples in part" : "no sample" };
}

function statesIn(data: string): string[] {
  const db = new Database(path.join(data, "app.db"), { readonly: true });
  const states = db.prepare("select state from import_run order by id").pluck().all() as string[];
  db.close();
  return states;
}

function chunkCount(data: string): number {
  const db = new Database(path.join(data, "trend.db"), { readonly: true });
  const count = db.prepare("select count(*) from chunk").pluck().get() as number;
  db.close();
  return count;
}
