import type { PassingFiles } from "@/db/passing-files";
import type { Context } from "../context";

/** What a file that comes in may take. */
export type UploadLimits = {
  largestFileBytes: number;
  /** Room on the disk that is left alone [bytes]. */
  keepFreeBytes: number;
};

/** 4 GB a file and 500 MB kept free: common practice, no source. */
export const DEFAULT_UPLOAD_LIMITS: UploadLimits = { largestFileBytes: 4_000_000_000, keepFreeBytes: 500_000_000 };

/** Largest part that is taken in one request [bytes]: half a minute on a slow line, and well below the usual limits of proxies. */
export const LARGEST_PART_BYTES = 16_000_000;

/** An upload of which no part has come for this long is given up. */
export const UPLOAD_KEPT_MS = 7 * 24 * 3_600_000;

/** The context of a use-case that takes files in by their bytes. */
export type UploadContext = Context & { passing: PassingFiles; limits: UploadLimits };
