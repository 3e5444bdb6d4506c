import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { onTestFinished } from "vitest";
import { openPassingFiles } from "@/db/passing-files";
import { openUploadFolder } from "@/db/uploads";
import type { Context } from "@/lib/services/context";
import type { UploadContext } from "@/lib/services/uploads/upload-context";
import { testContext } from "./database";
import { insertTestBuilding } from "./test-building";

/** A context that takes files in, on a folder of its own that goes with the test; and a building to bring them to. */
export function uploadTestContext(overrides: Partial<Context> = {}): {
  ctx: UploadContext;
  buildingId: number;
  folder: string;
} {
  const folder = mkdtempSync(path.join(tmpdir(), "uploads-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const stores = testContext({ uploads: openUploadFolder(folder), ...overrides });
  const ctx: UploadContext = {
    ...stores,
    passing: openPassingFiles(path.join(folder, "passing")),
    limits: { largestFileBytes: 1_000_000, keepFreeBytes: 0 },
  };
  return { ctx, buildingId: insertTestBuilding(ctx.db), folder };
}

/** Bytes in chunks, as a request's body gives them. */
export async function* chunksOf(bytes: Uint8Array, size = 1000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** A body whose line drops after `kept` bytes. */
export async function* cutAfter(bytes: Uint8Array, kept: number): AsyncGenerator<Uint8Array> {
  yield* chunksOf(bytes.subarray(0, kept));
  throw new Error("aborted");
}
