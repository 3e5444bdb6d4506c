import {
  findImportRun,
  type ImportRowNote,
  type ImportRunRow,
  listImportRows,
  listImportRuns,
} from "@/db/queries/import-runs";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

export type ImportRun = ImportRunRow;

/** Every file that was ever brought to a building, newest first. */
export function readImportHistory(ctx: Context, buildingId: number): ImportRunRow[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listImportRuns(ctx.db, buildingId);
}

/** One import with the rows that were not plainly accepted. */
export function readImportRun(
  ctx: Context,
  buildingId: number,
  runId: number,
): { run: ImportRunRow; rows: ImportRowNote[] } {
  requireFacilities(ctx);
  const run = findImportRun(ctx.db, buildingId, runId);
  if (!run) throw new ServiceError("not-found", "This import does not exist.");
  return { run, rows: listImportRows(ctx.db, runId) };
}
