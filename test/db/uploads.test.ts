import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { memoryUploads, openUploadFolder, THREAD_BYTES } from "@/db/uploads";

const folder = mkdtempSync(path.join(tmpdir(), "uploads-test-"));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const BYTES = Uint8Array.from({ length: 100_000 }, (_, i) => (i * 31) % 251);
const HASH = createHash("sha256").update(BYTES).digest("hex");

async function* inParts(bytes: Uint8Array, length: number): AsyncGenerator<Uint8Array> {
  for (let start = 0; start < bytes.length; start += length) yield bytes.subarray(start, start + length);
}

for (const [place, open] of [
  ["a folder", () => openUploadFolder(folder)],
  ["memory", memoryUploads],
] as const) {
  describe(`uploads in ${place}`, () => {
    it("keep bytes that come in parts under the hash of the whole", async () => {
      const uploads = open();
      expect(await uploads.saveFrom(inParts(BYTES, 7_001))).toEqual({ sha256: HASH, byteCount: BYTES.length });
      expect(Buffer.compare(uploads.read(HASH) ?? new Uint8Array(), BYTES)).toBe(0);
    });

    it("read where asked, and what there is at the end", async () => {
      const uploads = open();
      await uploads.saveFrom([BYTES]);
      const file = uploads.open(HASH);
      expect(file?.size).toBe(BYTES.length);
      expect([...(file?.read(500, 3) ?? [])]).toEqual([...BYTES.subarray(500, 503)]);
      expect([...(file?.read(BYTES.length - 2, 10) ?? [])]).toEqual([...BYTES.subarray(-2)]);
      expect(file?.read(BYTES.length + 5, 10)).toHaveLength(0);
      file?.close();
    });

    it("say null for what was never kept, and refuse a name that is no hash", async () => {
      expect(open().open(HASH)).toBeNull();
      expect(open().read(HASH)).toBeNull();
      expect(() => open().open("../app.db")).toThrow(RangeError);
      expect(() => open().read("../app.db")).toThrow(RangeError);
    });
  });
}

describe("an upload folder", () => {
  it("takes a file by its path, and leaves that where it is", async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), "upload-source-")), "a.csv");
    writeFileSync(file, BYTES);
    expect(await openUploadFolder(folder).saveFrom(file)).toEqual({ sha256: HASH, byteCount: BYTES.length });
    expect(existsSync(file)).toBe(true);
    rmSync(path.dirname(file), { recursive: true });
  });

  it("takes a large file as a small one: a thread copies it", async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), "upload-source-")), "large.csv");
    const bytes = Buffer.concat(Array.from({ length: Math.ceil(THREAD_BYTES / BYTES.length) + 1 }, () => BYTES));
    writeFileSync(file, bytes);
    const uploads = openUploadFolder(folder);
    const sha256 = createHash("sha256").update(bytes).digest("hex");
    expect(await uploads.saveFrom(file)).toEqual({ sha256, byteCount: bytes.length });
    expect(Buffer.compare(uploads.read(sha256) ?? new Uint8Array(), bytes)).toBe(0);
    rmSync(path.dirname(file), { recursive: true });
  });

  it("keeps nothing of bytes that break off", async () => {
    async function* broken() {
      yield BYTES;
      throw new Error("connection lost");
    }
    await expect(openUploadFolder(folder).saveFrom(broken())).rejects.toThrow("connection lost");
    expect(readdirSync(folder)).toEqual([]);
  });
});
