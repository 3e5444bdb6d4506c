import { sumBytesToCome } from "@/db/queries/uploads";
import { ServiceError } from "../errors";
import type { UploadContext } from "./upload-context";

/** Refuses a file that is larger than may be, or that the disk has no room for beside the uploads under way. */
export function refuseWithoutRoom(ctx: Pick<UploadContext, "db" | "passing" | "limits">, byteCount: number): void {
  const { largestFileBytes, keepFreeBytes } = ctx.limits;
  if (byteCount > largestFileBytes)
    throw new ServiceError(
      "too-large",
      `The file has ${megabytes(byteCount)}; the largest taken here has ${megabytes(largestFileBytes)}. Export shorter periods, or fewer points a file.`,
    );
  const room = ctx.passing.freeBytes() - keepFreeBytes - sumBytesToCome(ctx.db);
  if (byteCount > room)
    throw new ServiceError(
      "no-space",
      `The file has ${megabytes(byteCount)}, and the server's disk has room for ${megabytes(Math.max(0, room))} more. Free space in the data folder's disk, then send the file again.`,
    );
}

export const NO_SPACE =
  "The server's disk is full. What came so far is kept: free space, then go on with the same file.";

function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / 1e6).toLocaleString("en")} MB`;
}
