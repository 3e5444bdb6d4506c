import { listPoints, type PointRow } from "@/db/queries/points";
import type { PointKind } from "@/lib/trends/point-kind";
import type { Context } from "../context";
import { READING_AGE_SECONDS } from "./air-at-reports";

/** Kinds that say what the air was like and what the controls did, in the order in which they are read. */
const KINDS = [
  "zone-air-temp",
  "cooling-setpoint",
  "heating-setpoint",
  "airflow",
  "reheat-valve",
  "discharge-air-temp",
  "cooling-stage",
  "occupancy",
  "relative-humidity",
  "outdoor-air-temp",
] as const satisfies readonly PointKind[];
export type ConditionKind = (typeof KINDS)[number];

/** Kinds that a log may write only when they change, so that an old sample still holds. */
const HELD: readonly ConditionKind[] = ["cooling-setpoint", "heating-setpoint", "occupancy"];
/** Oldest sample that still says what was set [s]; of what is measured as for every report. Judgement, no source. */
const MOST_AGE_HELD_SECONDS = 7 * 86_400;
const HOUR = 3600;

/** A trend at a report's moment, in the unit that its kind is stored in. */
export type ReadingThen = {
  kind: ConditionKind;
  name: string;
  value: number;
  /** Between the sample and the report [s]. */
  ageSeconds: number;
  /** Mean of the samples of the hour before; null without any. */
  hourMean: number | null;
};

/** What the trends of a zone, or of the building where the zone has none of a kind, said at a moment [UTC seconds]. */
export async function readingsThen(
  ctx: Pick<Context, "db" | "trends">,
  buildingId: number,
  zoneId: number,
  ts: number,
): Promise<ReadingThen[]> {
  const points = listPoints(ctx.db, buildingId);
  const wanted = KINDS.flatMap((kind) => {
    const point = pointOf(points, zoneId, kind);
    return point ? [{ kind, point }] : [];
  });
  const found = await ctx.trends.asOf(
    wanted.map(({ kind, point }) => ({
      series: point.id,
      ts,
      maxAgeSeconds: HELD.includes(kind) ? MOST_AGE_HELD_SECONDS : READING_AGE_SECONDS,
    })),
  );
  const means = await hourMeans(
    ctx,
    wanted.map(({ point }) => point.id),
    ts,
  );
  return wanted.flatMap(({ kind, point }, i) => {
    const reading = found[i];
    if (!reading) return [];
    const { value } = reading;
    return {
      kind,
      name: point.externalName,
      value,
      ageSeconds: ts - reading.ts,
      hourMean: means.get(point.id) ?? null,
    };
  });
}

/** The zone's own point of a kind; of what describes the building, that of the building. */
function pointOf(points: readonly PointRow[], zoneId: number, kind: PointKind): PointRow | undefined {
  const ofKind = points.filter((point) => point.kind === kind);
  return ofKind.find((point) => point.zoneId === zoneId) ?? ofKind.find((point) => point.zoneId === null);
}

async function hourMeans(
  ctx: Pick<Context, "trends">,
  series: readonly number[],
  ts: number,
): Promise<Map<number, number>> {
  const sums = new Map<number, { sum: number; count: number }>();
  for await (const { series: id, v, decimals } of ctx.trends.read(series, ts - HOUR, ts + 1)) {
    // An hour may lie across two parts of a series.
    const { sum, count } = sums.get(id) ?? { sum: 0, count: 0 };
    const part = v.reduce((total, value) => total + value, 0) / 10 ** decimals;
    sums.set(id, { sum: sum + part, count: count + v.length });
  }
  return new Map([...sums].flatMap(([id, { sum, count }]) => (count > 0 ? [[id, sum / count] as const] : [])));
}
