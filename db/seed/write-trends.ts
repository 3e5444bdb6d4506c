import { createHash } from "node:crypto";
import type { TrendSlice, TrendStore, WriteStats } from "@/lib/trends/trend-store";
import type { AppTransaction } from "../client";
import { importRun, point } from "../schema/trend-import";
import { DEMO_AUTHOR } from "./demo-building";
import type { RecordedTrend } from "./record-trend";

/** Ids in the empty database: the run that brings the trends is the first, points are counted from 1. */
const RUN_ID = 1;

export type StoredTrends = {
  points: (Pick<RecordedTrend, "zoneCode" | "kind" | "externalName" | "fileUnit" | "sampling"> & { id: number })[];
  samples: number;
  byteCount: number;
  checksum: string;
  stats: WriteStats;
};

/** Puts all samples into the store, the series numbered in their order. */
export async function storeTrends(trends: TrendStore, recorded: Iterable<RecordedTrend>): Promise<StoredTrends> {
  const points: StoredTrends["points"] = [];
  const digest = createHash("sha256");
  let samples = 0;
  let byteCount = 0;
  function* slices(): Generator<TrendSlice> {
    for (const { ts, v, decimals, ...described } of recorded) {
      const id = points.length + 1;
      points.push({ ...described, id });
      digest.update(described.externalName).update(bytesOf(ts)).update(bytesOf(v));
      samples += ts.length;
      byteCount += ts.byteLength + v.byteLength;
      yield { series: id, ts, v, decimals };
    }
  }
  const stats = await trends.write(slices(), RUN_ID);
  return { points, samples, byteCount, checksum: digest.digest("hex"), stats };
}

/** The points of stored trends and the run that brought them; no file was read, so its rows are the samples generated. */
export function writePoints(
  tx: AppTransaction,
  place: { buildingId: number; zoneIds: ReadonlyMap<string, number>; now: number },
  { points, samples, byteCount, checksum, stats }: StoredTrends,
): void {
  const { buildingId, zoneIds, now } = place;
  for (const { zoneCode, ...row } of points)
    tx.insert(point)
      .values({ ...row, buildingId, zoneId: idOfZone(zoneIds, zoneCode) })
      .run();
  tx.insert(importRun)
    .values({
      id: RUN_ID,
      buildingId,
      kind: "trends",
      fileName: "generated trends",
      sha256: checksum,
      byteCount,
      state: "done",
      message: "Generated for the demo building; no file was read.",
      rowsInFile: samples,
      rowsAccepted: samples,
      samplesAdded: stats.added,
      samplesChanged: stats.changed,
      samplesSame: stats.same,
      startedAtMs: now,
      finishedAtMs: now,
      startedBy: DEMO_AUTHOR,
    })
    .run();
}

function idOfZone(zoneIds: ReadonlyMap<string, number>, zoneCode: string | null): number | null {
  if (zoneCode === null) return null;
  const id = zoneIds.get(zoneCode);
  if (id === undefined) throw new RangeError(`no zone ${zoneCode} was written`);
  return id;
}

const bytesOf = (values: Float64Array | Int32Array): Uint8Array =>
  new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
