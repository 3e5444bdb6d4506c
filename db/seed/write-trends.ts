import { createHash } from "node:crypto";
import { eq } from "drizzle-orm";
import type { TrendSlice, TrendStore } from "@/lib/trends/trend-store";
import type { AppDatabase } from "../client";
import { importRun, point } from "../schema/trend-import";
import { DEMO_AUTHOR } from "./demo-building";
import type { RecordedTrend } from "./record-trend";

export type WrittenTrends = { points: number; samples: number; checksum: string };

/**
 * Makes a point for each trend and writes its samples, under one import run. The run is done when the store has
 * everything; no file was read, so its rows are the samples that were generated.
 */
export async function writeTrends(input: {
  db: AppDatabase;
  trends: TrendStore;
  buildingId: number;
  zoneIds: ReadonlyMap<string, number>;
  now: number;
  recorded: Iterable<RecordedTrend>;
}): Promise<WrittenTrends> {
  const { db, trends, buildingId, zoneIds, now, recorded } = input;
  const run = db
    .insert(importRun)
    .values({
      buildingId,
      kind: "trends",
      fileName: "generated trends",
      sha256: "",
      byteCount: 0,
      state: "running",
      startedAtMs: now,
      startedBy: DEMO_AUTHOR,
    })
    .returning({ id: importRun.id })
    .get();
  const update = (values: Partial<typeof importRun.$inferInsert>) =>
    db.update(importRun).set(values).where(eq(importRun.id, run.id)).run();

  const digest = createHash("sha256");
  const total = { points: 0, samples: 0, bytes: 0 };
  function* slices(): Generator<TrendSlice> {
    for (const { zoneCode, ts, v, decimals, ...row } of recorded) {
      const { kind, externalName, fileUnit, sampling } = row;
      const series = db
        .insert(point)
        .values({ buildingId, kind, externalName, fileUnit, sampling, zoneId: idOfZone(zoneIds, zoneCode) })
        .returning({ id: point.id })
        .get().id;
      digest.update(externalName).update(bytesOf(ts)).update(bytesOf(v));
      total.points++;
      total.samples += ts.length;
      total.bytes += ts.byteLength + v.byteLength;
      yield { series, ts, v, decimals };
    }
  }
  try {
    const stats = await trends.write(slices(), run.id);
    const checksum = digest.digest("hex");
    update({
      state: "done",
      message: "Generated for the demo building; no file was read.",
      sha256: checksum,
      byteCount: total.bytes,
      rowsInFile: total.samples,
      rowsAccepted: total.samples,
      samplesAdded: stats.added,
      samplesChanged: stats.changed,
      samplesSame: stats.same,
      finishedAtMs: now,
    });
    return { points: total.points, samples: total.samples, checksum };
  } catch (error) {
    update({ state: "failed", message: "The generated trends could not be stored.", finishedAtMs: now });
    throw error;
  }
}

function idOfZone(zoneIds: ReadonlyMap<string, number>, zoneCode: string | null): number | null {
  if (zoneCode === null) return null;
  const id = zoneIds.get(zoneCode);
  if (id === undefined) throw new RangeError(`no zone ${zoneCode} was written`);
  return id;
}

const bytesOf = (values: Float64Array | Int32Array): Uint8Array =>
  new Uint8Array(values.buffer, values.byteOffset, values.byteLength);
