import {
  countImportRows,
  findImportRun,
  type ImportRowNote,
  type ImportRunLine,
  type ImportRunRow,
  listImportRows,
  listImportRunLines,
  listImportRuns,
  listWaitingRunLines,
} from "@/db/queries/import-runs";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";

export type ImportRun = ImportRunRow;
/** An import without its inspection and answers. */
export type ImportLine = ImportRunLine;

/** A page of a list that may be long: `first` counts from 1. */
export type Stretch = { page: number; pages: number; first: number; count: number };

const FILES_A_PAGE = 100;
const ROWS_A_PAGE = 200;

/** Every file that was ever brought to a building, newest first. */
export function readImportHistory(ctx: Context, buildingId: number): ImportRunRow[] {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  return listImportRuns(ctx.db, buildingId);
}

/** A page of the files that were ever brought to a building, newest first, and those that wait for their mapping. */
export function readHistoryPage(
  ctx: Context,
  buildingId: number,
  page: number,
): { runs: ImportRunLine[]; stretch: Stretch; waiting: ImportRunLine[] } {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  const { count } = listImportRunLines(ctx.db, buildingId, { limit: 0, offset: 0 });
  const stretch = stretchOf(page, count, FILES_A_PAGE);
  const { lines } = listImportRunLines(ctx.db, buildingId, { limit: FILES_A_PAGE, offset: stretch.first - 1 });
  return { runs: lines, stretch, waiting: listWaitingRunLines(ctx.db, buildingId) };
}

/** The page that is nearest to the one asked for. */
export function stretchOf(page: number, count: number, size: number): Stretch {
  const pages = Math.max(1, Math.ceil(count / size));
  const asked = Number.isInteger(page) ? Math.min(Math.max(page, 1), pages) : 1;
  return { page: asked, pages, first: (asked - 1) * size + 1, count };
}

/** One import with the rows that were not plainly accepted: all of them, or a page. */
export function readImportRun(
  ctx: Context,
  buildingId: number,
  runId: number,
  page?: number,
): { run: ImportRunRow; rows: ImportRowNote[]; stretch: Stretch } {
  requireFacilities(ctx);
  const run = findImportRun(ctx.db, buildingId, runId);
  if (!run) throw new ServiceError("not-found", "This import does not exist.");
  const count = countImportRows(ctx.db, runId);
  const size = page === undefined ? Math.max(1, count) : ROWS_A_PAGE;
  const stretch = stretchOf(page ?? 1, count, size);
  return { run, rows: listImportRows(ctx.db, runId, { limit: size, offset: stretch.first - 1 }), stretch };
}
