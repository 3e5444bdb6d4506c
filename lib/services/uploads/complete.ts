import { updateUpload } from "@/db/queries/uploads";
import { ServiceError } from "../errors";
import { type ReceivedFile, receiveTrendFile } from "../trend-imports/receive";
import { findUploadOrRefuse, lost, refuseGivenUp } from "./find";
import type { UploadContext } from "./upload-context";

/** A whole file and the import that it has become. */
export type CompletedUpload = ReceivedFile & { fileName: string };

/**
 * Ends an upload whose bytes are all there: finds their SHA-256, holds it against the one declared, puts the file into
 * the upload folder and takes it into the queue. Can be repeated after a crash at any point, and by a sender that did
 * not hear the answer.
 */
export async function completeUpload(ctx: UploadContext, buildingId: number, id: string): Promise<CompletedUpload> {
  const row = findUploadOrRefuse(ctx, buildingId, id);
  refuseGivenUp(row);
  const { fileName, totalBytes } = row;
  const sha256 = row.sha256 ?? (await hashWhole(ctx, buildingId, id));
  updateUpload(ctx.db, id, { sha256, receivedBytes: totalBytes, lastPartAtMs: ctx.now });
  if (ctx.passing.length(id) !== null) await ctx.uploads.adopt(ctx.passing.place(id), sha256);
  const received = receiveTrendFile(ctx, buildingId, { fileName, sha256, byteCount: totalBytes });
  updateUpload(ctx.db, id, { state: "complete", runId: received.run.id });
  return { ...received, fileName };
}

/** SHA-256 of a passing file that is whole and as declared. One that differs is discarded: no part of it can be trusted. */
async function hashWhole(ctx: UploadContext, buildingId: number, id: string): Promise<string> {
  const row = findUploadOrRefuse(ctx, buildingId, id);
  const length = await ctx.passing.settledLength(id);
  if (length === null) throw lost(ctx, row);
  if (length !== row.totalBytes)
    throw new ServiceError(
      "precondition",
      `${row.fileName} is not whole: ${length} of ${row.totalBytes} bytes are here. Send the rest first.`,
    );
  const sha256 = await ctx.passing.sha256(id);
  if (row.declaredSha256 && row.declaredSha256 !== sha256) {
    updateUpload(ctx.db, id, { state: "abandoned" });
    await ctx.passing.remove(id);
    throw new ServiceError(
      "invalid",
      `${row.fileName} was damaged on its way: its SHA-256 is not the one declared. It was discarded; send it again.`,
    );
  }
  return sha256;
}
