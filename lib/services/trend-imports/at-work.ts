import { listUnsettledRuns } from "@/db/queries/import-queue";
import type { ImportRunLine } from "@/db/queries/import-runs";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";

/** A file whose turn comes or is on. */
export type ImportAtWork = ImportRunLine;

/** Trend files of a building that are in the queue or worked on, in the order of their turns. */
export function readImportsAtWork(ctx: Context, buildingId: number): ImportAtWork[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listUnsettledRuns(ctx.db, buildingId);
}
