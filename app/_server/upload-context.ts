import path from "node:path";
import { openPassingFiles, type PassingFiles } from "@/db/passing-files";
import type { Context } from "@/lib/services/context";
import { DEFAULT_UPLOAD_LIMITS, type UploadContext } from "@/lib/services/uploads/upload-context";
import { dataFolder } from "./data-folder";

const KEY = Symbol.for("setpoint-ledger.passing-files");
const shared = globalThis as typeof globalThis & { [KEY]?: PassingFiles };

/**
 * The context of a request that brings a file. Passing files are shared by every copy of this module, so that a newer
 * request finds the part that an older one still writes. SETPOINT_LEDGER_LARGEST_FILE_MB sets the largest file.
 */
export function uploadContext(ctx: Context): UploadContext {
  shared[KEY] ??= openPassingFiles(path.join(dataFolder(), "uploads", "passing"));
  return { ...ctx, passing: shared[KEY], limits: { ...DEFAULT_UPLOAD_LIMITS, ...largestFile() } };
}

function largestFile(): { largestFileBytes: number } | undefined {
  const megabytes = Number(process.env.SETPOINT_LEDGER_LARGEST_FILE_MB);
  return megabytes > 0 ? { largestFileBytes: Math.floor(megabytes * 1e6) } : undefined;
}
