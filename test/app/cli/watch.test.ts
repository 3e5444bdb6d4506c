import { spawn } from "node:child_process";
import { once } from "node:events";
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { hostname, tmpdir } from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { withContext } from "@/app/_cli/context";
import { fileAway } from "@/app/_cli/watch/file-away";
import { takeFolder } from "@/app/_cli/watch/lock-file";
import { lookInto, settledFiles } from "@/app/_cli/watch/settled-files";
import { createBuilding } from "@/lib/services/buildings/save";
import { readImportHistory } from "@/lib/services/imports/history";
import { addZone } from "@/lib/services/zones/save";
import { buildingInputOf } from "@/test/factories/building";
import { wideCsv } from "@/test/factories/trend-csv";
import { runCommand } from "@/test/support/run-command";

const LOCK = ".setpoint-ledger-watch.lock";
let root: string;
let inbox: string;
const at = (...parts: string[]) => path.join(inbox, ...parts);
const filesIn = (folder: string) => (existsSync(folder) ? readdirSync(folder).sort() : []);

beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), "watch-"));
  inbox = path.join(root, "inbox");
  mkdirSync(inbox);
});
afterEach(() => rmSync(root, { recursive: true }));

describe("what counts as settled", () => {
  it("is a file of the same size and time at two looks; hidden and passing names never are", () => {
    for (const name of ["a.csv", "b.csv", ".hidden.csv", "c.csv.part", "d.TMP", "e.csv~"]) writeFileSync(at(name), "x");
    mkdirSync(at("done"));
    const before = lookInto(inbox);
    expect([...before.keys()].sort()).toEqual(["a.csv", "b.csv"]);
    appendFileSync(at("b.csv"), "more");
    writeFileSync(at("f.csv"), "x");
    expect(settledFiles(before, lookInto(inbox))).toEqual(["a.csv"]);
  });
});

describe("the lock of a folder", () => {
  it("is held by one process at a time and given back", () => {
    const first = takeFolder(inbox, Date.now());
    expect(takeFolder(inbox, Date.now())).toMatchObject({ heldBy: { pid: process.pid, host: hostname() } });
    if (!("release" in first)) throw new Error("an empty folder was held");
    first.release();
    expect(takeFolder(inbox, Date.now())).toHaveProperty("release");
  });

  it.each([
    ["of a process that is gone", { pid: 2 ** 22 + 1, host: hostname(), processBegan: "1" }],
    ["of a process whose number another one has now", { pid: process.pid, host: hostname(), processBegan: "1" }],
  ])("%s is taken over", (_, left) => {
    writeFileSync(at(LOCK), JSON.stringify({ ...left, since: "2026-11-25T08:00:00.000Z" }));
    expect(takeFolder(inbox, Date.now())).toHaveProperty("release");
    expect(filesIn(inbox)).toEqual([LOCK]);
  });

  it("of another host is respected", () => {
    writeFileSync(at(LOCK), JSON.stringify({ pid: 1, host: "elsewhere", processBegan: null, since: "x" }));
    expect(takeFolder(inbox, Date.now())).toMatchObject({ heldBy: { host: "elsewhere" } });
  });
});

describe("filing away", () => {
  const report = { file: "a.csv", outcome: "failed", message: "" } as const;

  it("overwrites nothing, and leaves what failed where it is", () => {
    writeFileSync(at("a.csv"), "1");
    expect(fileAway(inbox, "a.csv", report)).toBeNull();
    expect(filesIn(inbox)).toEqual(["a.csv"]);
    const refused = { ...report, outcome: "refused" } as unknown as Parameters<typeof fileAway>[2];
    expect(fileAway(inbox, "a.csv", refused)).toBe(path.join("refused", "a.csv"));
    writeFileSync(at("a.csv"), "2");
    expect(fileAway(inbox, "a.csv", refused)).toBe(path.join("refused", "a (2).csv"));
    expect(readFileSync(at("refused", "a.csv"), "utf8")).toBe("1");
    expect(filesIn(at("refused"))).toEqual(["a (2).csv", "a (2).csv.result.json", "a.csv", "a.csv.result.json"]);
  });
});

describe("trends watch", () => {
  const RULE = ["--building", "1", "--accept-proposals", "--json"];
  const data = () => path.join(root, "data");
  const watchOnce = (...more: string[]) => runCommand(data(), "trends", "watch", inbox, ...RULE, "--once", ...more);
  const linesOf = (out: string) =>
    out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));

  beforeEach(async () => {
    vi.stubEnv("SETPOINT_LEDGER_DATA", data());
    await withContext(async (ctx) => {
      const id = createBuilding(ctx, buildingInputOf());
      addZone(ctx, id, { code: "2-14", floorAreaM2: 120 });
    });
  });
  afterEach(() => vi.unstubAllEnvs());
  const history = () => withContext(async (ctx) => readImportHistory(ctx, 1));

  it("brings in what is there once, each to its place with its result, and says so in one line a file", {
    timeout: 60_000,
  }, async () => {
    writeFileSync(at("a.csv"), wideCsv({ "VAV-2-14 ZN-T (°F)": [71, 71.5, 72] }));
    writeFileSync(at("minutes.txt"), "Minutes of the safety meeting\n\nPresent: everyone.\n");
    writeFileSync(at("still-coming.csv.part"), "Time");
    writeFileSync(at("unknown.csv"), wideCsv({ "Misc 7 (°F)": [71, 71.5, 72] }));
    const { code, out, complaint } = await watchOnce();
    expect(code, complaint).toBe(4);
    expect(linesOf(out)).toMatchObject([
      { file: "a.csv", outcome: "imported", movedTo: path.join("done", "a.csv"), samples: { added: 3 } },
      { file: "minutes.txt", outcome: "refused", movedTo: path.join("refused", "minutes.txt") },
      { file: "unknown.csv", outcome: "asked", movedTo: path.join("asked", "unknown.csv") },
    ]);
    expect(filesIn(inbox)).toEqual(["asked", "done", "refused", "still-coming.csv.part"]);
    expect(JSON.parse(readFileSync(at("done", "a.csv.result.json"), "utf8"))).toMatchObject({ outcome: "imported" });

    writeFileSync(at("a.csv"), readFileSync(at("done", "a.csv")));
    const again = await watchOnce();
    expect(again.code, again.complaint).toBe(0);
    expect(linesOf(again.out)).toMatchObject([{ outcome: "unchanged", movedTo: path.join("done", "a (2).csv") }]);
    expect(await watchOnce()).toMatchObject({ code: 0, out: "" });
  });

  it("lets one process at a time watch, is killed without harm, and goes on where it was", {
    timeout: 90_000,
  }, async () => {
    const watching = spawn(
      process.execPath,
      ["--import", "tsx", "app/_cli/main.ts", "trends", "watch", inbox, ...RULE, "--every", "1"],
      { env: { ...process.env, SETPOINT_LEDGER_DATA: data() }, stdio: "ignore" },
    );
    const exited = once(watching, "exit");
    while (!existsSync(at(LOCK)) && watching.exitCode === null) await wait(20);
    const second = await watchOnce();
    expect(second).toMatchObject({ code: 1, out: "" });
    expect(second.complaint).toContain(`Process ${watching.pid} on ${hostname()}`);

    writeFileSync(at("a.csv"), wideCsv({ "VAV-2-14 ZN-T (°F)": [71, 71.5, 72] }));
    while ((await history()).length === 0 && watching.exitCode === null) await wait(5);
    watching.kill("SIGKILL");
    await exited;
    // Wherever it was killed: the file is in one place, and the next run ends with it imported once.
    const places = [at("a.csv"), at("done", "a.csv")].filter((file) => existsSync(file));
    expect(places).toHaveLength(1);
    const next = await watchOnce();
    expect(next.code, next.complaint).toBe(0);
    expect(filesIn(at("done"))).toEqual(["a.csv", "a.csv.result.json"]);
    expect(filesIn(inbox)).toEqual(["done"]);
    const runs = await history();
    expect(runs.filter(({ state }) => state === "done")).toMatchObject([{ samplesAdded: 3 }]);
  });

  it("is told to stop and gives the folder back", { timeout: 60_000 }, async () => {
    const watching = spawn(
      process.execPath,
      ["--import", "tsx", "app/_cli/main.ts", "trends", "watch", inbox, ...RULE],
      {
        env: { ...process.env, SETPOINT_LEDGER_DATA: data() },
        stdio: "ignore",
      },
    );
    const exited = once(watching, "exit");
    while (!existsSync(at(LOCK)) && watching.exitCode === null) await wait(20);
    watching.kill("SIGTERM");
    expect(await exited).toEqual([0, null]);
    expect(filesIn(inbox)).toEqual([]);
  });

  it("says what is wrong with a wrong call", { timeout: 60_000 }, async () => {
    const missing = await runCommand(data(), "trends", "watch", path.join(root, "no-such"), "--building", "1");
    expect(missing).toMatchObject({ code: 2, complaint: expect.stringContaining("is not a folder") });
    expect(await watchOnce("--every", "0")).toMatchObject({ code: 2 });
  });

  it("makes, lists and revokes a collector's token", { timeout: 60_000 }, async () => {
    const made = await runCommand(data(), "access", "token", "make", "--building", "1", "--collector", "nightly");
    expect(made.code, made.complaint).toBe(0);
    expect(made.out).toMatch(/^[\w-]{43}\nToken 1, for nightly/);
    await runCommand(data(), "access", "token", "revoke", "--building", "1", "--token", "1");
    const listed = await runCommand(data(), "access", "token", "list", "--building", "1", "--json");
    expect(JSON.parse(listed.out).tokens).toMatchObject([{ collector: "nightly", revokedAtMs: expect.any(Number) }]);
    expect(listed.out).not.toContain(made.out.slice(0, 43));
  });
});
