import type { ComfortReportRow } from "@/db/queries/comfort";
import { listPoints } from "@/db/queries/points";
import type { Context } from "../context";

/** Oldest reading that still says what was measured when a report was made [s]. Judgement, no source. */
export const READING_AGE_SECONDS = 1800;

/** The air of a report's moment, as recorded. */
export type AirAtReport = {
  /** Zone air [°C]; null where nothing was recorded within half an hour before. */
  zoneAirTempC: number | null;
  /**
   * Whether it was warm enough outdoors for mechanical cooling. As for the hours of the cooling season: all are where no
   * outdoor temperature is recorded at all, and none is in a gap of its record.
   */
  inCoolingSeason: boolean;
};

/** Zone air and season at the moment of each report of one building, in the order given. */
export async function airAtReports(
  ctx: Pick<Context, "db" | "trends">,
  buildingId: number,
  reports: readonly Pick<ComfortReportRow, "zoneId" | "reportedAtMs">[],
  seasonThresholdC: number,
): Promise<AirAtReport[]> {
  const points = listPoints(ctx.db, buildingId);
  const airPoint = new Map<number, number>();
  for (const { id, kind, zoneId } of points)
    if (kind === "zone-air-temp" && zoneId !== null && !airPoint.has(zoneId)) airPoint.set(zoneId, id);
  const read = async (pointOf: (zoneId: number) => number | undefined): Promise<(number | null)[]> => {
    const asked = reports.flatMap(({ zoneId, reportedAtMs }, report) => {
      const series = pointOf(zoneId);
      const ts = Math.floor(reportedAtMs / 1000);
      return series === undefined ? [] : [{ report, query: { series, ts, maxAgeSeconds: READING_AGE_SECONDS } }];
    });
    const found = await ctx.trends.asOf(asked.map(({ query }) => query));
    const values = reports.map((): number | null => null);
    for (const [i, { report }] of asked.entries()) values[report] = found[i]?.value ?? null;
    return values;
  };
  const zoneAir = await read((zoneId) => airPoint.get(zoneId));
  const outdoorPoint = points.find((point) => point.kind === "outdoor-air-temp" && point.zoneId === null);
  const [recorded] = outdoorPoint ? await ctx.trends.extent([outdoorPoint.id]) : [];
  const outdoor = outdoorPoint && recorded ? await read(() => outdoorPoint.id) : null;
  return reports.map((_, i) => ({
    zoneAirTempC: zoneAir[i] ?? null,
    inCoolingSeason: outdoor === null || (outdoor[i] ?? Number.NEGATIVE_INFINITY) >= seasonThresholdC,
  }));
}
