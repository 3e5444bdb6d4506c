import type { BuildingRow } from "@/db/queries/buildings";
import { isStoredInto } from "@/db/queries/import-queue";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context, Progress } from "../context";
import { type AnalysisFailure, type Analyst, subjectOf } from "./analyst";
import { changedInputs, type Input, type InputHashes, readInputHashes, restsOn } from "./inputs";
import type { ResultKind } from "./result-kind";
import { upToDate } from "./work-out";

/** Longest that a page waits for results before it shows the last ones [ms]. */
export const LONGEST_WAIT_MS = 200;

/** Why a result is not of now: what has changed since, how far the next one is, how the last try failed. */
export type Behind = { changed: Input[]; progress: Progress | null; failure: AnalysisFailure | null };

/** The last result of a kind; null when there never was one. `behind` is null when it is of now. */
export type Kept<T> = { result: T | null; workedOutAtMs: number | null; behind: Behind | null };

/** A result that a page shows: of a whole building, or a part such as a zone's. */
export type Wanted<T> = { kind: ResultKind<T>; part?: string | null };

type KeptOf<W extends readonly Wanted<unknown>[]> = {
  -readonly [I in keyof W]: W[I] extends Wanted<infer T> ? Kept<T> : never;
};

/** Inputs that come in all day by themselves: nobody has just changed them and looks for what that did. */
const SENT: readonly Input[] = ["reports"];

/**
 * The last results that a page shows. Those that are behind are asked for, and waited for a moment, so that small
 * buildings show what was just saved; longer ones show the last result until the next is there. Nobody waits for what an
 * import holds up or what comfort reports changed. Without an analyst they are worked out here.
 */
export async function readKeptAll<const W extends readonly Wanted<unknown>[]>(
  ctx: Context,
  buildingId: number,
  wanted: W,
  mostMs = LONGEST_WAIT_MS,
): Promise<KeptOf<W>> {
  requireFacilities(ctx);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const { analyst } = ctx;
  const kept = analyst
    ? await lastResults(ctx, analyst, building, wanted, mostMs)
    : await workedOutHere(ctx, building, wanted);
  return kept as KeptOf<W>;
}

export async function readKept<T>(ctx: Context, buildingId: number, kind: ResultKind<T>, part?: string) {
  const [kept] = await readKeptAll(ctx, buildingId, [{ kind, part }]);
  return kept;
}

async function workedOutHere(
  ctx: Context,
  building: BuildingRow,
  wanted: readonly Wanted<unknown>[],
): Promise<Kept<unknown>[]> {
  const found: Kept<unknown>[] = [];
  for (const { kind, part = null } of wanted)
    found.push({ ...(await upToDate(ctx, building, kind, part)), behind: null });
  return found;
}

async function lastResults(
  ctx: Context,
  analyst: Analyst,
  building: BuildingRow,
  wanted: readonly Wanted<unknown>[],
  mostMs: number,
): Promise<Kept<unknown>[]> {
  const hashes = await readInputHashes(ctx, building);
  const changes = wanted.map((each) => changesOf(ctx, building.id, each, hashes));
  const isHeld = changes.some((names) => names.length > 0) && isStoredInto(ctx.db, building.id);
  const waits = wanted.map(({ kind, part = null }, i) => {
    const changed = changes[i] as Input[];
    if (changed.length === 0) return 0;
    const isSent = changed.every((name) => SENT.includes(name));
    const waitMs = isSent || isHeld ? 0 : mostMs;
    return analyst
      .bringUpToDate({ buildingId: building.id, kind: kind.name, part }, isSent ? "patient" : "at-once", waitMs)
      .then(() => waitMs);
  });
  const hasWaited = (await Promise.all(waits)).some((ms) => ms > 0);
  const now = hasWaited ? await readInputHashes(ctx, building) : hashes;
  return wanted.map((each, i) => {
    const changed = hasWaited ? changesOf(ctx, building.id, each, now) : (changes[i] as Input[]);
    return keptNow(ctx, analyst, building.id, each, changed);
  });
}

function keptNow(
  ctx: Context,
  analyst: Analyst,
  buildingId: number,
  { kind, part = null }: Wanted<unknown>,
  changed: Input[],
): Kept<unknown> {
  const kept = analyst.memory.find(ctx.results, buildingId, subjectOf(kind.name, part));
  const isCurrent = kept !== null && changed.length === 0;
  return {
    result: kept?.result ?? null,
    workedOutAtMs: kept?.workedOutAtMs ?? null,
    behind: isCurrent ? null : { changed, ...analyst.standing({ buildingId, kind: kind.name, part }) },
  };
}

/** What has changed since the result was worked out; everything that it rests on when there is none. */
function changesOf(
  ctx: Context,
  buildingId: number,
  { kind, part = null }: Wanted<unknown>,
  hashes: InputHashes,
): Input[] {
  const stamp = ctx.results.stamp(buildingId, subjectOf(kind.name, part));
  return stamp ? changedInputs(stamp.restsOn, restsOn(kind, hashes)) : [...kind.inputs];
}
