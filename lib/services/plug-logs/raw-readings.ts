import { z } from "zod";
import { listBuildings } from "@/db/queries/buildings";
import {
  countKeptOf,
  findPlugLogRawDays,
  listKeptRaw,
  type PlugLogRow,
  setPlugLogRawDays,
  updatePlugLog,
} from "@/db/queries/plug-logs";
import { withoutDates } from "@/lib/electrical/plug-log/without-dates";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { parseInput } from "../parse";

/** Days for which raw readings are kept where a building has not said otherwise: our proposal, no source. */
export const DEFAULT_RAW_DAYS = 30;
const DAY_MS = 86_400_000;

export const plugLogRawDays = (ctx: Pick<Context, "db">, buildingId: number): number =>
  findPlugLogRawDays(ctx.db, buildingId) ?? DEFAULT_RAW_DAYS;

const rawDaysInput = z.object({
  plugLogRawDays: z
    .number("Give the days as a whole number from 0 to 365.")
    .int("Give whole days.")
    .min(0, "Give 0 days or more.")
    .max(365, "Raw readings show when someone was at a desk: keep them for a year at most."),
});

/** Sets how long raw readings are kept, and deletes those that are past it already. */
export function changePlugLogRawDays(ctx: Context, buildingId: number, input: z.input<typeof rawDaysInput>): void {
  requireFacilities(ctx);
  findBuildingOrRefuse(ctx, buildingId);
  setPlugLogRawDays(ctx.db, buildingId, parseInput(rawDaysInput, input).plugLogRawDays);
  deleteOldRawReadings(ctx);
}

/**
 * Deletes the raw readings of all plug logs that have been kept for their building's days, reviewed or not. The figures
 * stay. Returns how many logs lost theirs. Whoever keeps the time calls it; it asks nobody's leave.
 */
export function deleteOldRawReadings(ctx: Pick<Context, "db" | "uploads" | "now">): number {
  let deleted = 0;
  for (const { id } of listBuildings(ctx.db)) {
    const until = ctx.now - plugLogRawDays(ctx, id) * DAY_MS;
    for (const log of listKeptRaw(ctx.db, id, until)) {
      deleteRawReadings(ctx, log);
      deleted += 1;
    }
  }
  return deleted;
}

/** Deletes one log's raw readings, unless another log came in the same file, and the dates of its days with them. */
export function deleteRawReadings(ctx: Pick<Context, "db" | "uploads" | "now">, log: PlugLogRow): void {
  if (log.rawDeletedAtMs !== null) return;
  updatePlugLog(ctx.db, log.id, { rawDeletedAtMs: ctx.now, figures: withoutDates(log.figures) });
  if (countKeptOf(ctx.db, log.sha256) === 0) ctx.uploads.remove(log.sha256);
}
