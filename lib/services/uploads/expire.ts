import { listSilentUploads, updateUpload } from "@/db/queries/uploads";
import { UPLOAD_KEPT_MS, type UploadContext } from "./upload-context";

/**
 * Gives up uploads of which no part has come for seven days, and removes passing files that nothing has touched for as
 * long (those of a process that was killed). Returns how many uploads it gave up.
 */
export async function expireUploads(ctx: Pick<UploadContext, "db" | "passing" | "now">): Promise<number> {
  const beforeMs = ctx.now - UPLOAD_KEPT_MS;
  const silent = listSilentUploads(ctx.db, beforeMs);
  for (const { id } of silent) {
    updateUpload(ctx.db, id, { state: "expired" });
    await ctx.passing.remove(id);
  }
  for (const { id, changedAtMs } of ctx.passing.list()) if (changedAtMs < beforeMs) await ctx.passing.remove(id);
  return silent.length;
}
