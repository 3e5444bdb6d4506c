import { insertImportRows, updateImportRun } from "@/db/queries/import-runs";
import { findPointByName, type PointRow } from "@/db/queries/points";
import { addToReadingsRun } from "@/db/queries/readings-runs";
import type { TrendSlice } from "@/lib/trends/trend-store";
import { requireSender } from "../authorise";
import { findBuildingOrRefuse } from "../buildings/find";
import type { Context } from "../context";
import { ServiceError } from "../errors";
import { parseInput } from "../parse";
import { runOfDay } from "./day-run";
import { MOST_READINGS, type ReadingSeries, type ReadingsInput, readingsInput } from "./readings-input";
import { type Rejection, sortReadings } from "./sort-readings";

/** Rejections that are named one by one; all of them are counted. */
const MOST_NAMED = 100;

export type TakenReadings = {
  runId: number;
  readings: number;
  accepted: number;
  repaired: number;
  rejected: number;
  samples: { added: number; changed: number; same: number };
  /** The first hundred with their reasons. */
  rejections: Rejection[];
};

/**
 * Stores readings of points that are mapped already. A point that is not is refused by name, and then nothing of the
 * call is stored. The same readings again change nothing: a sample is known by its point and instant.
 */
export async function takeReadings(ctx: Context, buildingId: number, input: ReadingsInput): Promise<TakenReadings> {
  requireSender(ctx, buildingId);
  const building = findBuildingOrRefuse(ctx, buildingId);
  const series = parseInput(readingsInput, input);
  const readings = series.reduce((sum, each) => sum + each.readings.length, 0);
  if (readings > MOST_READINGS)
    throw new ServiceError(
      "too-large",
      `The call has ${readings} readings; one call takes ${MOST_READINGS}. Nothing was stored: send them in several calls.`,
    );
  const sorted = mappedSeries(ctx, buildingId, series).map(({ point, each }) => ({
    point,
    ...sortReadings(point, each, ctx.now),
  }));
  const run = runOfDay(ctx, building);
  const slices = sorted.flatMap(({ point, stored }): TrendSlice[] =>
    stored.ts.length > 0 ? [{ series: point.id, ts: stored.ts, v: stored.v, decimals: stored.decimals }] : [],
  );
  const samples = await ctx.trends.write(slices, run.id);
  const rejections = sorted.flatMap((each) => each.rejections);
  const sum = (of: "accepted" | "repaired") => sorted.reduce((total, each) => total + each[of], 0);
  const [accepted, repaired, rejected] = [sum("accepted"), sum("repaired"), rejections.length];
  const counted = addToReadingsRun(
    ctx.db,
    run.id,
    {
      rowsInFile: readings,
      rowsAccepted: accepted,
      rowsRepaired: repaired,
      rowsRejected: rejected,
      samplesAdded: samples.added,
      samplesChanged: samples.changed,
      samplesSame: samples.same,
    },
    ctx.now,
  );
  updateImportRun(ctx.db, run.id, {
    message: `${counted.samplesAdded} samples added, ${counted.samplesChanged} changed, ${counted.samplesSame} as they were.`,
  });
  keepRejections(ctx, run.id, rejections, counted.rowsRejected - rejected);
  return {
    runId: run.id,
    readings,
    accepted,
    repaired,
    rejected,
    samples: { added: samples.added, changed: samples.changed, same: samples.same },
    rejections: rejections.slice(0, MOST_NAMED),
  };
}

/** The points of a call; those that the building does not have are named together. */
function mappedSeries(
  ctx: Context,
  buildingId: number,
  series: readonly ReadingSeries[],
): { point: PointRow; each: ReadingSeries }[] {
  const found = series.map((each) => ({ each, point: findPointByName(ctx.db, buildingId, each.point) }));
  const unknown = [...new Set(found.flatMap(({ each, point }) => (point ? [] : [each.point])))];
  if (unknown.length > 0)
    throw new ServiceError(
      "invalid",
      `${unknown.length === 1 ? "This point is" : "These points are"} not mapped in this building: ${unknown
        .slice(0, 20)
        .map((name) => `"${name}"`)
        .join(
          ", ",
        )}${unknown.length > 20 ? ` and ${unknown.length - 20} more` : ""}. Nothing was stored. Bring in a trend file that has them and map them, or correct the names.`,
      Object.fromEntries(unknown.map((name) => [name, "not mapped"])),
    );
  return found as { point: PointRow; each: ReadingSeries }[];
}

/** The first rejections of a day are kept with its run. */
function keepRejections(ctx: Context, runId: number, rejections: readonly Rejection[], before: number): void {
  const room = Math.max(0, MOST_NAMED - before);
  insertImportRows(
    ctx.db,
    runId,
    rejections.slice(0, room).map(({ point, at, reason }, i) => ({
      line: before + i + 1,
      fate: "rejected" as const,
      code: "reading-rejected",
      excerpt: `${point}, ${at}: ${reason}`,
    })),
  );
}
