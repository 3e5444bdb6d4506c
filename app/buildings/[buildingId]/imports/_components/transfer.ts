import type { FileOutcome } from "@/lib/services/imports/take-file";
import type { Mark } from "./transfer-words";

/** A file of the form on its way to the server. */
export type Transfer = {
  key: number;
  file: File;
  state: "waiting" | "sending" | "resting" | "paused" | "done" | "refused";
  /** Bytes at the server or on their way. */
  bytes: number;
  marks: readonly Mark[];
  /** Where its parts go, once that is known. */
  address: string | null;
  /** What is wrong, or when it is tried again. */
  message: string;
  outcome: FileOutcome | null;
};

/** An upload that was begun before and is not whole. */
export type Unfinished = {
  id: string;
  fileName: string;
  totalBytes: number;
  receivedBytes: number;
  lastModifiedMs: number | null;
  startedBy: string;
};

export const isOpen = ({ state }: Transfer): boolean => state !== "done" && state !== "refused";

/** Whether a chosen file is the one that an upload was begun with. */
export function isSameFile(file: Pick<File, "name" | "size" | "lastModified">, begun: Unfinished): boolean {
  return file.name === begun.fileName && file.size === begun.totalBytes && file.lastModified === begun.lastModifiedMs;
}

/** What is said aloud of a transfer: when it begins, at each quarter, and when something happens to it. */
export function quarterOf({ bytes, file }: Transfer): number {
  return file.size === 0 ? 0 : Math.floor((4 * bytes) / file.size);
}
