import { createHash } from "node:crypto";
import { existsSync, readdirSync, rmSync, utimesSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { openPassingFiles } from "@/db/passing-files";
import { listImportRuns } from "@/db/queries/import-runs";
import { updateUpload } from "@/db/queries/uploads";
import { abandonUpload } from "@/lib/services/uploads/abandon";
import { appendPart, OffsetConflict } from "@/lib/services/uploads/append";
import { beginUpload } from "@/lib/services/uploads/begin";
import { completeUpload } from "@/lib/services/uploads/complete";
import { expireUploads } from "@/lib/services/uploads/expire";
import { plainFileName } from "@/lib/services/uploads/file-name";
import { listUnfinishedUploads, readUpload } from "@/lib/services/uploads/find";
import type { UploadContext } from "@/lib/services/uploads/upload-context";
import { refusalOf } from "@/test/support/refusal";
import { insertTestBuilding } from "@/test/support/test-building";
import { chunksOf, cutAfter, uploadTestContext } from "@/test/support/upload-context";

const FILE = Uint8Array.from({ length: 10_000 }, (_, i) => (i * 31) % 251);
const SHA = createHash("sha256").update(FILE).digest("hex");
const HOUR = 3_600_000;

const begin = (ctx: UploadContext, buildingId: number, more = {}) =>
  beginUpload(ctx, buildingId, { fileName: "floor-2.csv", totalBytes: FILE.length, ...more });

const send = (ctx: UploadContext, buildingId: number, id: string, from: number, to: number, bytes = FILE) =>
  appendPart(ctx, buildingId, id, { offset: from, bytes: chunksOf(bytes.subarray(from, to)), byteCount: to - from });

describe("an upload in parts", () => {
  it("takes parts one after the other, keeps the whole under its SHA-256 and takes it into the queue once", async () => {
    const { ctx, buildingId, folder } = uploadTestContext();
    const { id } = await begin(ctx, buildingId, { declaredSha256: SHA, lastModifiedMs: 5 });
    expect(id).toMatch(/^[\w-]{43}$/);
    await send(ctx, buildingId, id, 0, 4000);
    expect(await readUpload(ctx, buildingId, id)).toMatchObject({ receivedBytes: 4000, state: "receiving" });
    await send(ctx, buildingId, id, 4000, 10_000);
    const done = await completeUpload(ctx, buildingId, id);
    expect(done).toMatchObject({ state: "received", fileName: "floor-2.csv" });
    expect(done.run).toMatchObject({ sha256: SHA, byteCount: 10_000, startedBy: "Robin Vale" });
    expect(ctx.uploads.read(SHA)).toEqual(Buffer.from(FILE));
    expect(readdirSync(path.join(folder, "passing"))).toEqual([]);
    // A sender that did not hear the answer asks again and gets the same import.
    expect((await completeUpload(ctx, buildingId, id)).run.id).toBe(done.run.id);
    expect(await readUpload(ctx, buildingId, id)).toMatchObject({ state: "complete", receivedBytes: 10_000 });
    expect(listImportRuns(ctx.db, buildingId)).toHaveLength(1);
  });

  it("puts any file together from parts of any size, sent again after any cut", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const plan = fc.array(
      fc.record({ size: fc.integer({ min: 1, max: 3000 }), kept: fc.double({ min: 0, max: 1, noNaN: true }) }),
      {
        minLength: 1,
        maxLength: 6,
      },
    );
    await fc.assert(
      fc.asyncProperty(plan, async (parts) => {
        const { id } = await begin(ctx, buildingId);
        for (let i = 0, offset = 0; offset < FILE.length; i++) {
          const { size, kept } = parts[i % parts.length] as (typeof parts)[number];
          const part = FILE.subarray(offset, offset + size);
          const bytes = i < parts.length ? cutAfter(part, Math.floor(kept * part.length)) : chunksOf(part);
          await appendPart(ctx, buildingId, id, { offset, bytes, byteCount: part.length });
          offset = (await readUpload(ctx, buildingId, id)).receivedBytes;
        }
        expect((await completeUpload(ctx, buildingId, id)).run.sha256).toBe(SHA);
      }),
      { numRuns: 25, seed: 20_261_125 },
    );
  });

  it("refuses a part that does not begin where the file ends and says where it does", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    await send(ctx, buildingId, id, 0, 4000);
    for (const from of [0, 3999, 4001, 9000]) {
      const refused = await refusalOf(() => send(ctx, buildingId, id, from, 9500));
      expect(refused).toBeInstanceOf(OffsetConflict);
      expect(refused).toMatchObject({ code: "conflict", offset: 4000 });
    }
    expect((await readUpload(ctx, buildingId, id)).receivedBytes).toBe(4000);
  });

  it("refuses bytes beyond the size that was said, whether announced or not, and keeps what was there", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    await send(ctx, buildingId, id, 0, 9000);
    const more = new Uint8Array(1001);
    for (const byteCount of [1001, null]) {
      const refused = await refusalOf(() =>
        appendPart(ctx, buildingId, id, { offset: 9000, bytes: chunksOf(more, 400), byteCount }),
      );
      expect(refused.message).toContain("beyond the 10000 bytes");
      expect((await readUpload(ctx, buildingId, id)).receivedBytes).toBe(9000);
    }
  });

  it("keeps what came of a part whose line dropped, and goes on from there", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    const view = await appendPart(ctx, buildingId, id, { offset: 0, bytes: cutAfter(FILE, 2500), byteCount: 8000 });
    expect(view.receivedBytes).toBe(2500);
    await send(ctx, buildingId, id, 2500, 10_000);
    expect((await completeUpload(ctx, buildingId, id)).run.sha256).toBe(SHA);
  });

  it("goes on after the process was killed, by what is in the file", async () => {
    const { ctx, buildingId, folder } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    await send(ctx, buildingId, id, 0, 4000);
    updateUpload(ctx.db, id, { receivedBytes: 1000 });
    const restarted = { ...ctx, passing: openPassingFiles(path.join(folder, "passing")) };
    expect(listUnfinishedUploads(restarted, buildingId)).toMatchObject([{ id, receivedBytes: 4000 }]);
    expect((await readUpload(restarted, buildingId, id)).receivedBytes).toBe(4000);
    await send(restarted, buildingId, id, 4000, 10_000);
    // Killed after the file was put in its place, before that was noted.
    await restarted.uploads.adopt(restarted.passing.place(id), SHA);
    updateUpload(ctx.db, id, { sha256: SHA });
    expect((await completeUpload(restarted, buildingId, id)).state).toBe("received");
  });

  it("ends a part that hangs on a dead line when a newer request comes", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    const hanging = appendPart(ctx, buildingId, id, {
      offset: 0,
      bytes: silentAfter(FILE.subarray(0, 3000)),
      byteCount: 8000,
    });
    while (ctx.passing.length(id) !== 3000) await new Promise(setImmediate);
    expect((await readUpload(ctx, buildingId, id)).receivedBytes).toBe(3000);
    expect((await hanging).receivedBytes).toBe(3000);
    await send(ctx, buildingId, id, 3000, 10_000);
    expect((await completeUpload(ctx, buildingId, id)).run.sha256).toBe(SHA);
  });

  it("takes two uploads at once, also of the same file, without mixing them", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const other = Uint8Array.from(FILE).reverse();
    const [a, b, c] = await Promise.all([
      begin(ctx, buildingId),
      begin(ctx, buildingId, { fileName: "b.csv" }),
      begin(ctx, buildingId),
    ]);
    await Promise.all([
      send(ctx, buildingId, a.id, 0, 10_000),
      send(ctx, buildingId, b.id, 0, 10_000, other),
      send(ctx, buildingId, c.id, 0, 10_000),
    ]);
    const [one, two, three] = await Promise.all([a, b, c].map(({ id }) => completeUpload(ctx, buildingId, id)));
    expect(one?.run.sha256).toBe(SHA);
    expect(two?.run.sha256).toBe(createHash("sha256").update(other).digest("hex"));
    expect(three?.run.id).toBe(one?.run.id);
  });
});

describe("what is refused", () => {
  it("discards a file whose SHA-256 is not the one declared, and a part whose own is not", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId, { declaredSha256: "0".repeat(64) });
    const part = { offset: 0, bytes: chunksOf(FILE), byteCount: FILE.length };
    const damaged = await refusalOf(() => appendPart(ctx, buildingId, id, { ...part, sha256: "1".repeat(64) }));
    expect(damaged.message).toContain("damaged on its way");
    expect((await readUpload(ctx, buildingId, id)).receivedBytes).toBe(0);
    await appendPart(ctx, buildingId, id, { ...part, bytes: chunksOf(FILE), sha256: SHA });
    const wrong = await refusalOf(() => completeUpload(ctx, buildingId, id));
    expect(wrong.message).toContain("not the one declared");
    expect(ctx.passing.length(id)).toBeNull();
    expect(listImportRuns(ctx.db, buildingId)).toEqual([]);
    expect((await refusalOf(() => send(ctx, buildingId, id, 0, 10))).code).toBe("gone");
  });

  it("does not take a file for whole that is not", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    await send(ctx, buildingId, id, 0, 9999);
    const refused = await refusalOf(() => completeUpload(ctx, buildingId, id));
    expect(refused.message).toContain("9999 of 10000 bytes");
    await send(ctx, buildingId, id, 9999, 10_000);
    await completeUpload(ctx, buildingId, id);
  });

  it("refuses an empty file, one over the limit and one that the disk has no room for", async () => {
    const { ctx, buildingId } = uploadTestContext();
    expect((await refusalOf(() => begin(ctx, buildingId, { totalBytes: 0 }))).message).toContain("empty");
    const large = await refusalOf(() => begin(ctx, buildingId, { totalBytes: 1_000_001 }));
    expect(large).toMatchObject({ code: "too-large", message: expect.stringContaining("largest taken here has 1 MB") });
    const free = ctx.passing.freeBytes();
    const tight = { ...ctx, passing: { ...ctx.passing, freeBytes: () => 25_000 } };
    expect(free).toBeGreaterThan(25_000);
    await begin(tight, buildingId);
    await begin(tight, buildingId);
    // Two uploads under way still have 20,000 bytes to bring.
    const full = await refusalOf(() => begin(tight, buildingId));
    expect(full).toMatchObject({ code: "no-space", message: expect.stringContaining("Free space") });
  });

  it("lets nobody in who may not bring files, nor a collector of another building, nor by another building's address", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    const stranger = { ...ctx, actor: { kind: "anonymous" as const } };
    const elsewhere = insertTestBuilding(ctx.db);
    const collector = {
      ...ctx,
      actor: { kind: "collector" as const, name: "nightly", tokenId: 1, buildingId: elsewhere },
    };
    for (const [who, code] of [
      [stranger, "unauthenticated"],
      [collector, "forbidden"],
    ] as const) {
      expect((await refusalOf(() => begin(who, buildingId))).code).toBe(code);
      expect((await refusalOf(() => send(who, buildingId, id, 0, 10))).code).toBe(code);
      expect((await refusalOf(() => readUpload(who, buildingId, id))).code).toBe(code);
      expect((await refusalOf(() => completeUpload(who, buildingId, id))).code).toBe(code);
      expect((await refusalOf(() => abandonUpload(who, buildingId, id))).code).toBe(code);
      expect((await refusalOf(() => listUnfinishedUploads(who, buildingId))).code).toBe(code);
    }
    expect((await refusalOf(() => readUpload(ctx, elsewhere, id))).code).toBe("not-found");
    expect((await refusalOf(() => readUpload(ctx, buildingId, "../../etc/passwd"))).code).toBe("not-found");
    expect((await refusalOf(() => begin(ctx, 999))).code).toBe("not-found");
  });
});

describe("uploads that do not end", () => {
  it("discards one on request, and says so to whoever goes on with it", async () => {
    const { ctx, buildingId } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    await send(ctx, buildingId, id, 0, 4000);
    await abandonUpload(ctx, buildingId, id);
    await abandonUpload(ctx, buildingId, id);
    expect(existsSync(ctx.passing.place(id))).toBe(false);
    expect(listUnfinishedUploads(ctx, buildingId)).toEqual([]);
    expect(await refusalOf(() => send(ctx, buildingId, id, 4000, 5000))).toMatchObject({ code: "gone" });
  });

  it("gives up after seven days without a part, and removes passing files of nobody", async () => {
    const { ctx, buildingId, folder } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    const late = { ...ctx, now: ctx.now + 100 * HOUR };
    await send(late, buildingId, id, 0, 4000);
    await ctx.passing.make("a-passing-file-of-nobody");
    const at = (hours: number) => ({ ...ctx, now: late.now + hours * HOUR });
    expect(await expireUploads(at(7 * 24))).toBe(0);
    expect((await readUpload(at(7 * 24), buildingId, id)).expiresAtMs).toBe(late.now + 7 * 24 * HOUR);
    const old = new Date(ctx.now);
    utimesSync(path.join(folder, "passing", "a-passing-file-of-nobody.part"), old, old);
    expect(await expireUploads({ ...at(0), now: late.now + 7 * 24 * HOUR + 1 })).toBe(1);
    expect(readdirSync(path.join(folder, "passing"))).toEqual([]);
    expect((await refusalOf(() => send(ctx, buildingId, id, 4000, 5000))).message).toContain("for 7 days");
  });

  it("says so when the bytes are gone from the server", async () => {
    const { ctx, buildingId, folder } = uploadTestContext();
    const { id } = await begin(ctx, buildingId);
    rmSync(path.join(folder, "passing"), { recursive: true });
    expect(await refusalOf(() => send(ctx, buildingId, id, 0, 10))).toMatchObject({ code: "gone" });
    expect(await refusalOf(() => completeUpload(ctx, buildingId, id))).toMatchObject({ code: "gone" });
  });
});

test.each([
  ["../../etc/x.csv", "x.csv"],
  ["C:\\exports\\floor 2.csv", "floor 2.csv"],
  ["C:floor.csv", "floor.csv"],
  ["a\u0000b\n.csv", "ab.csv"],
  ["..", "unnamed file"],
  ["exports/", "unnamed file"],
  ["gpj\u202evsc.csv", "gpjvsc.csv"],
])("a name with path pieces is made harmless: %j", (given, plain) => {
  expect(plainFileName(given)).toBe(plain);
});

test("a long name keeps its beginning and its ending", () => {
  const plain = plainFileName(`${"x".repeat(500)}.csv`);
  expect(plain).toHaveLength(200);
  expect(plain.endsWith("x.csv")).toBe(true);
});

/** A body that sends some bytes and then nothing more, without ending. */
async function* silentAfter(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield* chunksOf(bytes);
  await new Promise(() => {});
}
