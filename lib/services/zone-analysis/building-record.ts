import type { BuildingRow } from "@/db/queries/buildings";
import { findOccupiedHours } from "@/db/queries/buildings";
import { listPoints, type PointRow } from "@/db/queries/points";
import { occupiedMask } from "@/lib/time/occupied-hours";
import { zoneTable } from "@/lib/time/zone-table";
import { type Grid, gridOver } from "@/lib/trends/grid";
import { localWeekHours } from "@/lib/trends/local-week-hours";
import type { PointKind } from "@/lib/trends/point-kind";
import { resample } from "@/lib/trends/resample";
import type { PointSeries } from "@/lib/trends/samples";
import type { BuildingGrids } from "@/lib/trends/zone-grids";
import type { Context } from "../context";

/** Longest record that is analysed at once, counted back from its end [s]: three years. */
const LONGEST_RECORD_SECONDS = 3 * 366 * 86_400;

/** Trends begin no earlier than 2000 [s]. */
const EARLIEST_UTC_SECONDS = 946_684_800;

export type RecordPeriod = { fromUtcSeconds: number; toUtcSeconds: number };

/** The recorded period of a building on its grid, with what all zones share. */
export type BuildingRecord = RecordPeriod & {
  points: PointRow[];
  grids: BuildingGrids;
  weekHours: Uint8Array;
};

/** First and last second of what is analysed of these points; null when no zone air temperature is recorded at all. */
export async function recordPeriod(ctx: Context, points: readonly PointRow[]): Promise<RecordPeriod | null> {
  const zoneAir = points.filter((point) => point.kind === "zone-air-temp").map((point) => point.id);
  const extents = (await ctx.trends.extent(zoneAir)).flatMap((each) => each ?? []);
  if (extents.length === 0) return null;
  const toUtcSeconds = Math.max(...extents.map((each) => each.lastTs)) + 1;
  const fromUtcSeconds = Math.max(
    Math.min(...extents.map((each) => each.firstTs)),
    toUtcSeconds - LONGEST_RECORD_SECONDS,
  );
  return { fromUtcSeconds, toUtcSeconds };
}

/** Null when no zone air temperature is recorded at all. */
export async function buildingRecord(ctx: Context, building: BuildingRow): Promise<BuildingRecord | null> {
  const points = listPoints(ctx.db, building.id);
  const period = await recordPeriod(ctx, points);
  if (!period) return null;
  const { fromUtcSeconds, toUtcSeconds } = period;
  const grid = gridOver({ fromUtcSeconds, toUtcSeconds });
  const zone = zoneTable(building.timeZone);
  const shared = async (kind: PointKind) => {
    const point = points.find((each) => each.kind === kind && each.zoneId === null);
    const series = point && (await readSeries(ctx, [point], grid)).get(point.id);
    return series ? resample(series, grid) : null;
  };
  return {
    points,
    fromUtcSeconds,
    toUtcSeconds,
    weekHours: localWeekHours(grid, zone),
    grids: {
      grid,
      scheduleMask: occupiedMask(grid, findOccupiedHours(ctx.db, building.id), zone),
      outdoorAirTempC: await shared("outdoor-air-temp"),
      supplyAirTempC: await shared("supply-air-temp"),
      relativeHumidityPct: await shared("relative-humidity"),
    },
  };
}

/**
 * Samples of points over a grid, by point id; points that hold none are left out. A change-of-value point is read
 * from its beginning: the sample that holds at the start of the grid may be months old.
 */
export async function readSeries(
  ctx: Context,
  points: readonly PointRow[],
  grid: Grid,
): Promise<Map<number, PointSeries>> {
  const found = new Map<number, PointSeries>();
  const to = grid.startUtcSeconds + grid.count * grid.stepSeconds;
  for (const sampling of ["interval", "change-of-value"] as const) {
    const ids = points.filter((point) => point.sampling === sampling).map((point) => point.id);
    const from = sampling === "interval" ? grid.startUtcSeconds : EARLIEST_UTC_SECONDS;
    for await (const slice of ctx.trends.read(ids, from, to)) {
      if (slice.ts.length > 0) found.set(slice.series, { samples: slice, sampling });
    }
  }
  return found;
}
