import { findUploadRow, listReceivingUploads, type UploadRow, updateUpload } from "@/db/queries/uploads";
import { requireSender } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { ServiceError } from "../errors";
import type { UploadContext } from "./upload-context";
import { type UploadView, uploadView } from "./upload-view";

/** An upload of the building, whatever became of it. */
export function findUploadOrRefuse(ctx: UploadContext, buildingId: number, id: string): UploadRow {
  requireSender(ctx, buildingId);
  const row = findUploadRow(ctx.db, buildingId, id);
  if (!row) throw new ServiceError("not-found", "This upload does not exist. Begin it again with the same file.");
  return row;
}

/**
 * How far an upload is, to go on with it. A part that is still being written is ended first, so that the answer stays
 * true. The passing file counts, not what was noted of it: it has every byte that came before a crash.
 */
export async function readUpload(ctx: UploadContext, buildingId: number, id: string): Promise<UploadView> {
  const row = findUploadOrRefuse(ctx, buildingId, id);
  if (row.state !== "receiving") return uploadView(row, null);
  const length = await ctx.passing.settledLength(id);
  if (length === null && !row.sha256) throw lost(ctx, row);
  if (length !== null && length !== row.receivedBytes && length <= row.totalBytes)
    updateUpload(ctx.db, id, { receivedBytes: length });
  return uploadView(row, length);
}

/** Uploads to a building that were begun and are not whole; whoever has the same file can go on with it. */
export function listUnfinishedUploads(ctx: UploadContext, buildingId: number): UploadView[] {
  requireSender(ctx, buildingId);
  findBuildingOrRefuse(ctx, buildingId);
  return listReceivingUploads(ctx.db, buildingId).map((row) => uploadView(row, ctx.passing.length(row.id)));
}

/** The refusal for an upload whose bytes are no longer there; it is given up. */
export function lost(ctx: UploadContext, row: UploadRow): ServiceError {
  updateUpload(ctx.db, row.id, { state: "abandoned" });
  return new ServiceError("gone", `The bytes of ${row.fileName} are no longer on the server. Send the file again.`);
}

/** Refuses to go on with an upload that was given up. */
export function refuseGivenUp(row: UploadRow): void {
  if (row.state === "expired")
    throw new ServiceError("gone", `No part of ${row.fileName} came for 7 days, so it was given up. Send it again.`);
  if (row.state === "abandoned") throw new ServiceError("gone", `${row.fileName} was discarded. Send it again.`);
}
