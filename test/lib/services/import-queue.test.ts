import { hostname } from "node:os";
import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import { readImportsAtWork } from "@/lib/services/trend-imports/at-work";
import { inspectRun } from "@/lib/services/trend-imports/inspect-run";
import { queueTrendImports, repeatImport } from "@/lib/services/trend-imports/queue";
import { storeRun } from "@/lib/services/trend-imports/run";
import { settleRun } from "@/lib/services/trend-imports/settle-run";
import { takeBackLeftImports } from "@/lib/services/trend-imports/take-back-left";
import { newOwner } from "@/lib/services/trend-imports/work";
import { queueOffice } from "@/test/factories/import-queue";
import { refusalOf } from "@/test/support/refusal";
import { TEST_NOW } from "@/test/support/test-clock";

const MINUTE_MS = 60_000;
/** A process that is alive and not ours, and one that there cannot be. */
const ALIVE = `${hostname()}/${process.ppid}/somebody`;
const DEAD = `${hostname()}/99999999/somebody`;

describe("the import queue", () => {
  it("works off the oldest file first, and stores nothing before its points are mapped", async () => {
    const { ctx, buildingId, receive, workOff, map, run } = queueOffice();
    const [first, second] = [await receive("a.csv"), await receive("b.csv", [60, 61])];
    expect(readImportsAtWork(ctx, buildingId).map(({ id, state }) => [id, state])).toEqual([
      [first, "received"],
      [second, "received"],
    ]);
    await workOff();
    expect([run(first).state, run(second).state]).toEqual(["waiting", "waiting"]);
    expect(listPoints(ctx.db, buildingId)).toEqual([]);
    map(first);
    const third = await receive("c.csv", [50]);
    await workOff();
    expect(run(first)).toMatchObject({ state: "done", samplesAdded: 3, owner: null, attempts: 0 });
    expect(run(third).stageStartedAtMs).toBeGreaterThanOrEqual(run(first).stageStartedAtMs ?? 0);
    expect(readImportsAtWork(ctx, buildingId)).toEqual([]);
  });

  it("keeps how far the reading came, and findings by code", async () => {
    const { store, run } = queueOffice();
    const id = await store("a.csv", [72, "", 70, -9999]);
    const done = run(id);
    expect(done.bytesRead).toBe(done.byteCount);
    expect(done).toMatchObject({ rowsRead: 4, readingsRead: 2, rowsInFile: 4 });
    expect(done.findingsSoFar).toMatchObject({ "value-missing": 1, "sentinel-value": 1 });
  });

  it("goes on with the next file when one fails, and says of that one why", async () => {
    const { ctx, receive, workOff, run, faults } = queueOffice();
    const [first, second] = [await receive("a.csv"), await receive("b.csv", [60, 61])];
    ctx.uploads.remove(run(first).sha256);
    await workOff();
    expect(run(first)).toMatchObject({ state: "failed", message: expect.stringContaining("bring the file in again") });
    expect(run(second).state).toBe("waiting");
    expect(faults).toEqual([]);
  });

  it("marks a file failed when the program has a fault in it, and hands the fault over", async () => {
    const { ctx, receive, workOff, run, faults, map, values } = queueOffice();
    const id = await receive("a.csv");
    await workOff();
    map(id);
    const write = ctx.trends.write;
    ctx.trends.write = () => Promise.reject(new Error("disk full"));
    await workOff();
    expect(faults).toEqual([expect.objectContaining({ message: "disk full" })]);
    expect(run(id)).toMatchObject({ state: "failed", message: expect.stringMatching(/^The import broke off/) });
    ctx.trends.write = write;
    repeatImport(ctx, run(id).buildingId, id);
    await workOff();
    expect(run(id).state).toBe("done");
    expect(await values()).toHaveLength(3);
  });
});

describe("after a restart", () => {
  it("reads again what was being read, and stores again what was being stored", async () => {
    const { receive, workOff, map, run, leave, values } = queueOffice();
    const [reading, storing] = [await receive("a.csv", [60, 61]), await receive("b.csv")];
    await workOff();
    map(storing);
    leave(reading, { state: "inspecting", owner: DEAD, heartbeatAtMs: TEST_NOW, attempts: 1 });
    leave(storing, { state: "running", owner: DEAD, heartbeatAtMs: TEST_NOW, attempts: 1 });
    await workOff();
    expect([run(reading).state, run(storing).state]).toEqual(["waiting", "done"]);
    expect(await values()).toHaveLength(3);
  });

  it("leaves a file alone in the middle of which the program ended three times", async () => {
    const { ctx, receive, run, leave } = queueOffice();
    const id = await receive("a.csv");
    leave(id, { state: "inspecting", owner: DEAD, heartbeatAtMs: TEST_NOW, attempts: 3 });
    expect(takeBackLeftImports(ctx, TEST_NOW)).toBe(1);
    expect(run(id)).toMatchObject({ state: "failed", message: expect.stringMatching(/^The program ended 3 times/) });
  });
});

describe("two processes at one queue", () => {
  it("do not take each other's live run, but one of which no sign of life has come for a minute", async () => {
    const { ctx, receive, workOff, run, leave } = queueOffice();
    const id = await receive("a.csv");
    leave(id, { state: "inspecting", owner: ALIVE, heartbeatAtMs: TEST_NOW });
    expect(takeBackLeftImports(ctx, TEST_NOW + MINUTE_MS)).toBe(0);
    await workOff();
    expect(run(id)).toMatchObject({ state: "inspecting", owner: ALIVE });
    expect(takeBackLeftImports(ctx, TEST_NOW + MINUTE_MS + 1)).toBe(1);
    expect(run(id)).toMatchObject({ state: "received", owner: null });
  });

  it("take a run over at once when its process is gone, whatever its last sign of life", async () => {
    const { ctx, receive, leave } = queueOffice();
    const id = await receive("a.csv");
    leave(id, { state: "inspecting", owner: DEAD, heartbeatAtMs: TEST_NOW });
    expect(takeBackLeftImports(ctx, TEST_NOW)).toBe(1);
  });

  it("tell a thread of this process from one of an earlier process that had the same number", async () => {
    const { ctx, receive, leave } = queueOffice();
    const id = await receive("a.csv");
    leave(id, { state: "inspecting", owner: newOwner(), heartbeatAtMs: TEST_NOW });
    expect(takeBackLeftImports(ctx, TEST_NOW + 100)).toBe(0);
    const beforeWeBegan = TEST_NOW - Math.round(process.uptime() * 1000) - 100;
    leave(id, { heartbeatAtMs: beforeWeBegan });
    expect(takeBackLeftImports(ctx, TEST_NOW)).toBe(1);
  });

  it("store one file at a time", async () => {
    const { receive, workOff, map, run, leave } = queueOffice();
    const [mine, theirs] = [await receive("a.csv"), await receive("b.csv", [60])];
    await workOff();
    map(mine);
    leave(theirs, { state: "running", owner: ALIVE, heartbeatAtMs: TEST_NOW });
    await workOff();
    expect(run(mine).state).toBe("queued");
    leave(theirs, { state: "waiting", owner: null });
    await workOff();
    expect(run(mine).state).toBe("done");
  });

  it("both bring the same file through once, each telling its own asker", async () => {
    const { ctx, receive, run, faults } = queueOffice();
    const id = await receive("a.csv");
    const settled = await Promise.all(
      ["one", "two"].map((name) => settleRun(ctx, id, { owner: `${newOwner()}-${name}`, clock: () => TEST_NOW })),
    );
    expect(settled.map(({ state }) => state)).toEqual(["waiting", "waiting"]);
    expect(run(id).attempts).toBe(0);
    expect(faults).toEqual([]);
  });

  it("stop writing to a run that somebody else was given", async () => {
    const { ctx, receive, workOff, map, run, leave, work } = queueOffice();
    const id = await receive("a.csv");
    await workOff();
    map(id);
    const open = ctx.uploads.open;
    ctx.uploads.open = (sha256) => {
      leave(id, { owner: ALIVE });
      return open(sha256);
    };
    await expect(storeRun(ctx, id, work)).rejects.toThrow();
    expect(run(id)).toMatchObject({ state: "running", owner: ALIVE });
  });
});

describe("moves that a run's state does not allow", () => {
  it("are refused in words", async () => {
    const { ctx, buildingId, receive, store, work, workOff } = queueOffice();
    const waiting = await receive("w.csv", [50, 51]);
    await workOff();
    const done = await store("a.csv");
    expect((await refusalOf(() => inspectRun(ctx, waiting, work))).message).toContain("is waiting");
    expect((await refusalOf(() => storeRun(ctx, done, work))).message).toContain("was imported before");
    expect((await refusalOf(() => queueTrendImports(ctx, buildingId, [done]))).code).toBe("conflict");
    expect((await refusalOf(() => queueTrendImports(ctx, buildingId, [waiting]))).code).toBe("precondition");
    expect((await refusalOf(() => repeatImport(ctx, buildingId, done))).message).toContain("nothing to repeat");
    expect((await refusalOf(() => queueTrendImports(ctx, buildingId, [999]))).code).toBe("not-found");
  });
});

describe("reading a file", () => {
  it("never holds it whole: it is read in pieces, before and while it is stored", async () => {
    const { ctx, receive, workOff, map, run } = queueOffice({ timeZone: "America/Phoenix" });
    const id = await receive(
      "long.csv",
      Array.from({ length: 250_000 }, (_, i) => 68 + (i % 80) / 10),
    );
    const { open } = ctx.uploads;
    const lengths: number[] = [];
    ctx.uploads.read = () => {
      throw new Error("the whole file was asked for");
    };
    ctx.uploads.open = (sha256) => {
      const source = open(sha256);
      if (!source) return null;
      const read = (offset: number, length: number) => {
        lengths.push(length);
        return source.read(offset, length);
      };
      return { ...source, read };
    };
    await workOff();
    map(id);
    await workOff();
    expect(run(id)).toMatchObject({ state: "done", samplesAdded: 250_000 });
    expect(run(id).byteCount).toBeGreaterThan(5_000_000);
    expect(Math.max(...lengths)).toBeLessThan(run(id).byteCount);
  });
});
