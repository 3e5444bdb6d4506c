import type { AppDatabase } from "@/db/client";
import type { ResultStore } from "@/db/results";
import type { UploadFolder } from "@/db/uploads";
import type { TrendStore } from "@/lib/trends/trend-store";
import type { Analyst } from "./kept/analyst";

/**
 * Who is asking. An occupant holds a comfort link and may do nothing else; a collector holds a token and may only add
 * trend files and readings to its building.
 */
export type Actor =
  | { kind: "user"; id: string; name: string; role: "administrator" | "facilities" }
  | { kind: "command-line"; name: string }
  | { kind: "collector"; name: string; tokenId: number; buildingId: number }
  | { kind: "anonymous" };

/** What every use-case is given: the stores, the asker and the clock. */
export type Context = {
  db: AppDatabase;
  trends: TrendStore;
  uploads: UploadFolder;
  results: ResultStore;
  actor: Actor;
  /** Epoch milliseconds. */
  now: number;
  /** Who works results out while the last one is shown. Without one they are worked out here and now. */
  analyst?: Analyst;
  /** Is told how far a long calculation is. */
  onProgress?: (progress: Progress) => void;
};

/** So many of so many zones are done. */
export type Progress = { done: number; of: number };
