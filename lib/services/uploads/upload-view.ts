import type { UploadRow } from "@/db/queries/uploads";
import { UPLOAD_KEPT_MS } from "./upload-context";

/** An upload as its sender may see it. */
export type UploadView = Pick<
  UploadRow,
  | "id"
  | "buildingId"
  | "fileName"
  | "totalBytes"
  | "receivedBytes"
  | "lastModifiedMs"
  | "state"
  | "runId"
  | "startedAtMs"
  | "startedBy"
> & {
  /** When it is given up unless a part comes before. */
  expiresAtMs: number;
};

/** `length` is that of the passing file; null when it is gone, as it is once the file is whole. */
export function uploadView(row: UploadRow, length: number | null): UploadView {
  return {
    id: row.id,
    buildingId: row.buildingId,
    fileName: row.fileName,
    totalBytes: row.totalBytes,
    receivedBytes: row.sha256 ? row.totalBytes : Math.min(length ?? row.receivedBytes, row.totalBytes),
    lastModifiedMs: row.lastModifiedMs,
    state: row.state,
    runId: row.runId,
    startedAtMs: row.startedAtMs,
    startedBy: row.startedBy,
    expiresAtMs: row.lastPartAtMs + UPLOAD_KEPT_MS,
  };
}
