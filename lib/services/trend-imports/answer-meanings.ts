import { inspectTrendFile } from "@/lib/importers/trend-csv/inspect-trend-file";
import type { DateOrder } from "@/lib/importers/trend-csv/trend-file";
import { requireFacilities } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import type { MappingTask } from "./mapping";
import { inspectionOf } from "./mapping-lines";

/** First and last reading of a file under one order of day and month; null when it cannot be read so. */
export type OrderMeaning = { order: DateOrder; firstUtc: string | null; lastUtc: string | null };

/** Files above this size [bytes] or with more points are not read again for it, and no more than so many of them. */
const LARGEST_BYTES = 2_000_000;
const MOST_POINTS = 500;
const MOST_FILES = 3;

/**
 * What either order of day and month would make of the files that ask for it, by run: they are read once with each.
 * Large files are left out, and so is all but the first few.
 */
export async function readOrderMeanings(
  ctx: Context,
  buildingId: number,
  { fileAsks, waiting }: Pick<MappingTask, "fileAsks" | "waiting">,
): Promise<Map<number, OrderMeaning[]>> {
  requireFacilities(ctx);
  const { timeZone } = findBuildingOrRefuse(ctx, buildingId);
  const meanings = new Map<number, OrderMeaning[]>();
  const asking = new Set(fileAsks.filter(({ ask }) => ask.what === "date-order").map(({ runId }) => runId));
  const small = waiting
    .filter(
      (run) => asking.has(run.id) && run.byteCount <= LARGEST_BYTES && inspectionOf(run).points.length <= MOST_POINTS,
    )
    .slice(0, MOST_FILES);
  for (const { id, fileName, sha256 } of small) {
    const bytes = ctx.uploads.read(sha256);
    if (!bytes) continue;
    const found: OrderMeaning[] = [];
    for (const order of ["mdy", "dmy"] as const) {
      const { points } = await inspectTrendFile({ fileName, bytes, timeZone, answers: { dateOrder: order } });
      const firsts = points.flatMap(({ firstUtc }) => firstUtc ?? []).sort();
      const lasts = points.flatMap(({ lastUtc }) => lastUtc ?? []).sort();
      found.push({ order, firstUtc: firsts[0] ?? null, lastUtc: lasts.at(-1) ?? null });
    }
    meanings.set(id, found);
  }
  return meanings;
}
