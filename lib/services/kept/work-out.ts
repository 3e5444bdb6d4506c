import type { BuildingRow } from "@/db/queries/buildings";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { type AnalysisJob, subjectOf } from "./analyst";
import { type InputHashes, readInputHashes, restsOn } from "./inputs";
import type { ResultKind } from "./result-kind";

export type WorkedOut<T> = { result: T; workedOutAtMs: number };

/** A result as it must read now: the kept one when nothing that it rests on has changed, else worked out here. */
export async function upToDate<T>(
  ctx: Context,
  building: BuildingRow,
  kind: ResultKind<T>,
  part: string | null = null,
): Promise<WorkedOut<T>> {
  const hashes = await readInputHashes(ctx, building);
  const subject = subjectOf(kind.name, part);
  if (ctx.results.stamp(building.id, subject)?.restsOn === restsOn(kind, hashes)) {
    const kept = ctx.results.find(building.id, subject);
    if (kept) return { result: kept.result as T, workedOutAtMs: kept.workedOutAtMs };
  }
  return workOutAndKeep(ctx, building, kind, part, hashes);
}

/** Does a job that someone else asked for. */
export async function workOutJob(
  ctx: Context,
  { buildingId, part }: AnalysisJob,
  kind: ResultKind<unknown>,
): Promise<void> {
  await upToDate(ctx, findBuildingOrRefuse(ctx, buildingId), kind, part);
}

/** What changes while it is worked out makes the result behind again: the hashes are those from before. */
async function workOutAndKeep<T>(
  ctx: Context,
  building: BuildingRow,
  kind: ResultKind<T>,
  part: string | null,
  hashes: InputHashes,
): Promise<WorkedOut<T>> {
  const result = await kind.workOut(ctx, building, part);
  const kept = {
    buildingId: building.id,
    subject: subjectOf(kind.name, part),
    restsOn: restsOn(kind, hashes),
    workedOutAtMs: ctx.now,
    result,
  };
  ctx.results.save(kept);
  return { result, workedOutAtMs: ctx.now };
}
