import type { BuildingRow } from "@/db/queries/buildings";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context, Progress } from "../context";
import { type AnalysisFailure, type AnalysisJob, type Analyst, subjectOf } from "./analyst";
import { changedInputs, type Input, readInputHashes, restsOn } from "./inputs";
import type { ResultKind } from "./result-kind";
import { upToDate } from "./work-out";

/** Longest that a page waits for a result before it shows the last one [ms]. */
export const LONGEST_WAIT_MS = 200;

/** Why a result is not of now: what has changed since, how far the next one is, how the last try failed. */
export type Behind = { changed: Input[]; progress: Progress | null; failure: AnalysisFailure | null };

/** The last result of a kind; null when there never was one. `behind` is null when it is of now. */
export type Kept<T> = { result: T | null; workedOutAtMs: number | null; behind: Behind | null };

/** Inputs that come in all day by themselves: nobody has just changed them and looks for what that did. */
const SENT: readonly Input[] = ["reports"];

/**
 * The last result of a kind. One that is behind is asked for, and waited for a moment, so that small buildings show what
 * was just saved; longer ones show the last result until the next is there. Without an analyst it is worked out here.
 */
export async function readKept<T>(
  ctx: Context,
  buildingId: number,
  kind: ResultKind<T>,
  { part = null, mostMs = LONGEST_WAIT_MS }: { part?: string | null; mostMs?: number } = {},
): Promise<Kept<T>> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const { analyst } = ctx;
  if (!analyst) return { ...(await upToDate(ctx, building, kind, part)), behind: null };
  const job = { buildingId, kind: kind.name, part };
  let changed = await changesOf(ctx, building, kind, part);
  if (changed.length > 0) {
    const isSent = changed.every((name) => SENT.includes(name));
    await analyst.bringUpToDate(job, isSent ? "patient" : "at-once", mostMs);
    changed = await changesOf(ctx, building, kind, part);
  }
  return keptNow<T>(ctx, analyst, job, changed);
}

function keptNow<T>(ctx: Context, analyst: Analyst, job: AnalysisJob, changed: Input[]): Kept<T> {
  const kept = analyst.memory.find(ctx.results, job.buildingId, subjectOf(job.kind, job.part));
  return {
    result: kept ? (kept.result as T) : null,
    workedOutAtMs: kept?.workedOutAtMs ?? null,
    behind: changed.length === 0 && kept ? null : { changed, ...analyst.standing(job) },
  };
}

/** What has changed since the result was worked out; everything that it rests on when there is none. */
async function changesOf(
  ctx: Context,
  building: BuildingRow,
  kind: ResultKind<unknown>,
  part: string | null,
): Promise<Input[]> {
  const stamp = ctx.results.stamp(building.id, subjectOf(kind.name, part));
  if (!stamp) return [...kind.inputs];
  return changedInputs(stamp.restsOn, restsOn(kind, await readInputHashes(ctx, building)));
}
