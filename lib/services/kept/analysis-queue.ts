import { isStoredInto, listBuildingsImportedSince } from "@/db/queries/import-queue";
import type { Context } from "../context";
import { type AnalysisJob, jobKey } from "./analyst";
import { OF_BUILDING } from "./kinds";

/**
 * Results that are to be worked out, each once, in the order that they were asked for. A building's turn comes when no file
 * is being stored into it any more: what is worked out before would be behind at once.
 */
export class AnalysisQueue {
  private readonly waiting = new Map<string, AnalysisJob>();

  /** `importsSeenMs`: imports that ended by then are of no concern. */
  constructor(private importsSeenMs: number) {}

  ask(job: AnalysisJob): void {
    this.waiting.set(jobKey(job), job);
  }

  /** Asks for all of the buildings whose imports have ended since the last look: nobody has to open a page first. */
  askForImported({ db }: Pick<Context, "db">): void {
    const { buildingIds, newestMs } = listBuildingsImportedSince(db, this.importsSeenMs);
    this.importsSeenMs = Math.max(this.importsSeenMs, newestMs);
    for (const buildingId of buildingIds) for (const kind of OF_BUILDING) this.ask({ buildingId, kind, part: null });
  }

  /** Takes the first whose turn has come. */
  take({ db }: Pick<Context, "db">): AnalysisJob | null {
    const held = new Map<number, boolean>();
    for (const [key, job] of this.waiting) {
      const isHeld = held.get(job.buildingId) ?? isStoredInto(db, job.buildingId);
      held.set(job.buildingId, isHeld);
      if (isHeld) continue;
      this.waiting.delete(key);
      return job;
    }
    return null;
  }
}
