import { describe, expect, it } from "vitest";
import { listPoints } from "@/db/queries/points";
import { receiveTrendFile } from "@/lib/services/trend-imports/receive";
import { cancelImport, undoImport, whyNotUndone } from "@/lib/services/trend-imports/withdraw";
import { queueOffice } from "@/test/factories/import-queue";
import { testContext } from "@/test/support/database";
import { refusalOf } from "@/test/support/refusal";

/** Lets somebody cancel the run as soon as its file is opened. */
function cancelWhenRead(office: ReturnType<typeof queueOffice>, id: number): void {
  const { ctx, buildingId } = office;
  const { open } = ctx.uploads;
  ctx.uploads.open = (sha256) => {
    ctx.uploads.open = open;
    cancelImport(ctx, buildingId, id);
    return open(sha256);
  };
}

describe("cancelling an import", () => {
  it("works at once while nobody works on it: received, waiting and queued", async () => {
    const { ctx, buildingId, receive, workOff, map, run, values } = queueOffice();
    const [queued, waiting] = [await receive("q.csv"), await receive("w.csv", [60, 61])];
    await workOff();
    map(queued);
    const received = await receive("r.csv", [50]);
    for (const id of [queued, waiting, received]) expect(cancelImport(ctx, buildingId, id)).toBe("cancelled");
    await workOff();
    for (const id of [queued, waiting, received])
      expect(run(id)).toMatchObject({
        state: "cancelled",
        message: "Cancelled by Robin Vale. Nothing had been stored.",
      });
    expect(await values()).toEqual([]);
  });

  it("stops the reading of a file", async () => {
    const office = queueOffice();
    const id = await office.receive("a.csv");
    cancelWhenRead(office, id);
    await office.workOff();
    expect(office.run(id)).toMatchObject({ state: "cancelled", owner: null, withdrawalAskedBy: null });
    expect(office.faults).toEqual([]);
  });

  it("takes out again what an import had stored that is cancelled in the middle of it", async () => {
    const office = queueOffice();
    await office.store("before.csv", [72, 71]);
    const before = await office.values();
    const id = await office.store("a.csv", [72, 75, 70, 69]);
    expect(await office.values()).toHaveLength(4);
    // As if it had been cut off after its samples were stored: the repetition is then cancelled.
    office.leave(id, { state: "queued", attempts: 1 });
    cancelWhenRead(office, id);
    await office.workOff();
    expect(office.run(id)).toMatchObject({
      state: "cancelled",
      message: "Cancelled by Robin Vale. What it had stored was taken out again.",
    });
    expect(await office.values()).toEqual(before);
  });

  it("takes out what was stored when the import is cancelled before it is repeated", async () => {
    const { ctx, buildingId, store, leave, workOff, run, values } = queueOffice();
    const id = await store("a.csv");
    leave(id, { state: "queued", attempts: 1 });
    expect(cancelImport(ctx, buildingId, id)).toBe("asked");
    await workOff();
    expect(run(id).message).toBe("Cancelled by Robin Vale. What it had stored was taken out again.");
    expect(await values()).toEqual([]);
  });

  it("lets the same file come again", async () => {
    const { ctx, buildingId, receive, run } = queueOffice();
    const id = await receive("a.csv");
    cancelImport(ctx, buildingId, id);
    const { sha256, byteCount } = run(id);
    const again = receiveTrendFile(ctx, buildingId, { fileName: "a.csv", sha256, byteCount });
    expect(again).toMatchObject({ state: "received" });
    expect(again.run.id).not.toBe(id);
  });

  it("is refused once the import has ended", async () => {
    const { ctx, buildingId, store } = queueOffice();
    const id = await store("a.csv");
    const refused = await refusalOf(() => cancelImport(ctx, buildingId, id));
    expect(refused.message).toBe("a.csv is done: there is nothing left to cancel.");
    const stranger = testContext({ ...ctx, actor: { kind: "anonymous" } });
    expect((await refusalOf(() => cancelImport(stranger, buildingId, id))).code).toBe("unauthenticated");
    expect((await refusalOf(() => undoImport(stranger, buildingId, id))).code).toBe("unauthenticated");
  });
});

describe("undoing an import", () => {
  it("puts trends back as they were before it, keeps its points mapped, and says so", async () => {
    const { ctx, buildingId, store, workOff, run, values } = queueOffice();
    await store("first.csv", [72, 71]);
    const before = await values();
    const second = await store("second.csv", [72, 75, 70]);
    expect(await values()).not.toEqual(before);
    await undoImport(ctx, buildingId, second);
    await workOff();
    expect(await values()).toEqual(before);
    expect(run(second)).toMatchObject({
      state: "undone",
      message: "Undone by Robin Vale. Trends are as they were before it. Its points stay mapped.",
      samplesAdded: 1,
      samplesChanged: 1,
    });
    expect(listPoints(ctx.db, buildingId)).toHaveLength(1);
    expect((await refusalOf(() => undoImport(ctx, buildingId, second))).message).toContain("nothing to undo");
  });

  it("is refused while a later import of the same trends stands, and named by it", async () => {
    const { ctx, buildingId, store, workOff, run, values } = queueOffice();
    const first = await store("first.csv", [72, 71]);
    const second = await store("second.csv", [72, 75, 70]);
    const refused = await refusalOf(() => undoImport(ctx, buildingId, first));
    expect(refused.message).toBe(
      `Import ${second} (second.csv) has written to the same trends since. Undo that one first.`,
    );
    await undoImport(ctx, buildingId, second);
    await workOff();
    await undoImport(ctx, buildingId, first);
    await workOff();
    expect([run(first).state, run(second).state]).toEqual(["undone", "undone"]);
    expect(await values()).toEqual([]);
  });

  it("is refused for an import that is older than the last five, with the reason", async () => {
    const { ctx, buildingId, store } = queueOffice();
    const first = await store("0.csv", [72]);
    for (let i = 1; i <= 5; i++)
      await store(
        `${i}.csv`,
        Array.from({ length: i + 1 }, (_, row) => 72 + row),
      );
    expect(await whyNotUndone(ctx, buildingId, first)).toMatch(/no longer kept: it is for the last five imports/);
  });

  it("asks once, and goes on with an undoing that was cut off", async () => {
    const { ctx, buildingId, store, leave, workOff, run, values } = queueOffice();
    const id = await store("a.csv");
    await undoImport(ctx, buildingId, id);
    expect(await whyNotUndone(ctx, buildingId, id)).toBe("a.csv is being undone already.");
    leave(id, { owner: "elsewhere/1/gone", heartbeatAtMs: 0 });
    await workOff();
    expect(run(id).state).toBe("undone");
    expect(await values()).toEqual([]);
  });

  it("lets the file be imported again afterwards", async () => {
    const { ctx, buildingId, store, workOff, run, values } = queueOffice();
    const id = await store("a.csv");
    await undoImport(ctx, buildingId, id);
    await workOff();
    const again = await store("a.csv");
    expect(again).not.toBe(id);
    expect(run(again).state).toBe("done");
    expect(await values()).toHaveLength(3);
  });
});
