import { randomBytes } from "node:crypto";
import { requireSender } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import { ServiceError } from "../errors";
import { receiveTrendFile } from "../trend-imports/receive";
import type { CompletedUpload } from "./complete";
import { plainFileName } from "./file-name";
import { NO_SPACE, refuseWithoutRoom } from "./room";
import type { UploadContext } from "./upload-context";

/** A file in one piece: `byteCount` and `sha256` (hexadecimal) are what its sender says of it, null when nothing. */
export type WholeFile = {
  fileName: string;
  bytes: AsyncIterable<Uint8Array>;
  byteCount: number | null;
  sha256: string | null;
};

/**
 * Takes a trend file in that comes in one piece, streamed to the disk. Nothing is kept of one that does not come
 * whole: its sender sends it again.
 */
export async function receiveWholeFile(
  ctx: UploadContext,
  buildingId: number,
  file: WholeFile,
): Promise<CompletedUpload> {
  requireSender(ctx, buildingId);
  findBuildingOrRefuse(ctx, buildingId);
  refuseWithoutRoom(ctx, file.byteCount ?? 0);
  const fileName = plainFileName(file.fileName);
  const id = randomBytes(32).toString("base64url");
  await ctx.passing.make(id);
  try {
    const { largestFileBytes } = ctx.limits;
    const { status, length } = await ctx.passing.append(id, { offset: 0, atMost: largestFileBytes, bytes: file.bytes });
    if (status === "too-many-bytes") refuseWithoutRoom(ctx, largestFileBytes + 1);
    if (status === "no-space") throw new ServiceError("no-space", NO_SPACE);
    if (status !== "appended" || (file.byteCount !== null && length !== file.byteCount))
      throw new ServiceError(
        "precondition",
        `${fileName} did not come whole: ${length} bytes${file.byteCount === null ? "" : ` of ${file.byteCount}`}. Nothing was kept; send it again.`,
      );
    if (length === 0) throw new ServiceError("invalid", `${fileName} is empty: export it again.`);
    const sha256 = await ctx.passing.sha256(id);
    if (file.sha256 && file.sha256 !== sha256)
      throw new ServiceError("invalid", `${fileName} was damaged on its way: its SHA-256 differs. Send it again.`);
    await ctx.uploads.adopt(ctx.passing.place(id), sha256);
    return { ...receiveTrendFile(ctx, buildingId, { fileName, sha256, byteCount: length }), fileName };
  } finally {
    await ctx.passing.remove(id);
  }
}
