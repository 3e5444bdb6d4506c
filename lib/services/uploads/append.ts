import { updateUpload } from "@/db/queries/uploads";
import { ServiceError } from "../errors";
import { findUploadOrRefuse, lost, refuseGivenUp } from "./find";
import { NO_SPACE } from "./room";
import { LARGEST_PART_BYTES, type UploadContext } from "./upload-context";
import { type UploadView, uploadView } from "./upload-view";

/** A part that does not go on where the file ends; `offset` is where it does. */
export class OffsetConflict extends ServiceError {
  readonly offset: number;
  constructor(offset: number, message: string) {
    super("conflict", message);
    this.offset = offset;
  }
}

export type UploadPart = {
  offset: number;
  bytes: AsyncIterable<Uint8Array>;
  /** Bytes that the part has, when its sender says it. */
  byteCount: number | null;
  /** SHA-256 of the part in hexadecimal, when its sender says it. */
  sha256?: string;
};

/**
 * Adds a part to an upload. It has to begin where the file ends and may not go beyond its size; of a part that is cut
 * off, what came is kept, and the view that comes back says how far the file is.
 */
export async function appendPart(
  ctx: UploadContext,
  buildingId: number,
  id: string,
  part: UploadPart,
): Promise<UploadView> {
  const row = findUploadOrRefuse(ctx, buildingId, id);
  refuseGivenUp(row);
  if (row.sha256) throw new OffsetConflict(row.totalBytes, `${row.fileName} is here already, all of it.`);
  const left = row.totalBytes - part.offset;
  if (part.byteCount !== null && part.byteCount > left)
    throw new ServiceError("invalid", beyond(row.fileName, row.totalBytes));
  if (part.byteCount !== null && part.byteCount > LARGEST_PART_BYTES) throw partTooLarge();
  const { status, length } = await ctx.passing.append(id, {
    offset: part.offset,
    atMost: Math.max(0, Math.min(left, LARGEST_PART_BYTES)),
    bytes: part.bytes,
    sha256: part.sha256,
  });
  if (status === "gone") throw lost(ctx, row);
  updateUpload(ctx.db, id, { receivedBytes: Math.min(length, row.totalBytes), lastPartAtMs: ctx.now });
  switch (status) {
    case "elsewhere":
      throw new OffsetConflict(length, `${row.fileName} has ${length} bytes here: send the part that begins there.`);
    case "too-many-bytes":
      throw left <= LARGEST_PART_BYTES
        ? new ServiceError("invalid", beyond(row.fileName, row.totalBytes))
        : partTooLarge();
    case "wrong-digest":
      throw new ServiceError("invalid", "The part was damaged on its way: its SHA-256 differs. Send it again.");
    case "no-space":
      throw new ServiceError("no-space", NO_SPACE);
  }
  return uploadView({ ...row, lastPartAtMs: ctx.now }, length);
}

const partTooLarge = () =>
  new ServiceError("too-large", `A part has at most ${LARGEST_PART_BYTES} bytes. Send the file in smaller parts.`);

function beyond(fileName: string, totalBytes: number): string {
  return `The part goes beyond the ${totalBytes} bytes that ${fileName} was said to have; nothing of it was kept. Begin again if the file has grown.`;
}
