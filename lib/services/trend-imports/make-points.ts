import { setImmediate as nextTurn } from "node:timers/promises";
import { listPoints, type NewPoint, type PointRow, upsertPoints } from "@/db/queries/points";
import type { Context } from "../context";
import type { MappedPoint, Series } from "./mapped-points";

/** Points written in one statement: nobody else waits long for the rows. */
const POINTS_AT_ONCE = 50;

/**
 * Makes all of a file's points, by name, before their samples: an import that is cut off is mapped when it is repeated.
 * Points that stand as they are to be are not written again.
 */
export async function makePoints(
  ctx: Pick<Context, "db">,
  buildingId: number,
  mapped: readonly MappedPoint[],
): Promise<Map<string, Series>> {
  const present = new Map(listPoints(ctx.db, buildingId).map((point) => [point.externalName, point]));
  const series = new Map<string, Series>();
  const wanted: NewPoint[] = [];
  for (const { point, choice } of mapped) {
    const known = present.get(point.name);
    const row = {
      buildingId,
      externalName: point.name,
      kind: choice.kind,
      zoneId: choice.zoneId,
      fileUnit: point.unit ?? choice.unit ?? point.unitAsWritten ?? "state",
      sampling: samplingOf(point, known),
    };
    if (known && isSame(known, row)) series.set(point.name, { id: known.id, kind: known.kind });
    else wanted.push(row);
  }
  for (let at = 0; at < wanted.length; at += POINTS_AT_ONCE) {
    for (const { externalName, id, kind } of upsertPoints(ctx.db, wanted.slice(at, at + POINTS_AT_ONCE)))
      series.set(externalName, { id, kind });
    await nextTurn();
  }
  return series;
}

/**
 * A point that was recorded as it changed goes on being read so: a setpoint that nobody touches is told once a day, which looks
 * like intervals, and read as such its earlier samples would hold for no time at all.
 */
const samplingOf = (point: MappedPoint["point"], known: PointRow | undefined): PointRow["sampling"] =>
  known?.sampling === "change-of-value" ? known.sampling : point.sampling;

const isSame = (known: PointRow, { kind, zoneId, fileUnit, sampling }: NewPoint): boolean =>
  known.kind === kind && known.zoneId === zoneId && known.fileUnit === fileUnit && known.sampling === sampling;
