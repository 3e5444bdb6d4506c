import { updateUpload } from "@/db/queries/uploads";
import { ServiceError } from "../errors";
import { findUploadOrRefuse } from "./find";
import type { UploadContext } from "./upload-context";

/** Discards an upload that is not whole, with what came of it. Discarding it again changes nothing. */
export async function abandonUpload(ctx: UploadContext, buildingId: number, id: string): Promise<void> {
  const row = findUploadOrRefuse(ctx, buildingId, id);
  if (row.state === "complete" || row.sha256)
    throw new ServiceError(
      "conflict",
      `${row.fileName} is whole and was taken in; its import can be found in the history.`,
    );
  if (row.state === "receiving") updateUpload(ctx.db, id, { state: "abandoned" });
  await ctx.passing.remove(id);
}
