import { and, count, desc, eq, isNull, lte } from "drizzle-orm";
import type { Queryable } from "../client";
import { deviceSetting } from "../schema/device";
import { fieldSetting, plugLog } from "../schema/plug-log";
import { importRun } from "../schema/trend-import";

export type PlugLogRow = typeof plugLog.$inferSelect;
export type NewPlugLog = typeof plugLog.$inferInsert;

export function insertPlugLog(db: Queryable, row: NewPlugLog): PlugLogRow {
  return db.insert(plugLog).values(row).returning().get();
}

export function updatePlugLog(db: Queryable, id: number, row: Partial<NewPlugLog>): void {
  db.update(plugLog).set(row).where(eq(plugLog.id, id)).run();
}

export function deletePlugLog(db: Queryable, id: number): void {
  db.delete(plugLog).where(eq(plugLog.id, id)).run();
}

export function findPlugLog(db: Queryable, deviceId: number, id: number): PlugLogRow | undefined {
  return db
    .select()
    .from(plugLog)
    .where(and(eq(plugLog.deviceId, deviceId), eq(plugLog.id, id)))
    .get();
}

export function findPlugLogByFile(db: Queryable, deviceId: number, sha256: string): PlugLogRow | undefined {
  return db
    .select()
    .from(plugLog)
    .where(and(eq(plugLog.deviceId, deviceId), eq(plugLog.sha256, sha256)))
    .get();
}

/** Logs of a device, the newest readings first. */
export function listPlugLogs(db: Queryable, deviceId: number): PlugLogRow[] {
  return db.select().from(plugLog).where(eq(plugLog.deviceId, deviceId)).orderBy(desc(plugLog.fromMs)).all();
}

/** Logs of a building whose raw readings are still kept and came at or before an instant. */
export function listKeptRaw(db: Queryable, buildingId: number, importedUntilMs: number): PlugLogRow[] {
  return db
    .select()
    .from(plugLog)
    .where(
      and(
        eq(plugLog.buildingId, buildingId),
        isNull(plugLog.rawDeletedAtMs),
        lte(plugLog.importedAtMs, importedUntilMs),
      ),
    )
    .all();
}

/** Logs that still need this file's raw readings, and imports that were brought in with the very same file. */
export function countKeptOf(db: Queryable, sha256: string): number {
  const logs = db
    .select({ count: count() })
    .from(plugLog)
    .where(and(eq(plugLog.sha256, sha256), isNull(plugLog.rawDeletedAtMs)))
    .get();
  const imports = db.select({ count: count() }).from(importRun).where(eq(importRun.sha256, sha256)).get();
  return (logs?.count ?? 0) + (imports?.count ?? 0);
}

export function findPlugLogRawDays(db: Queryable, buildingId: number): number | undefined {
  return db.select().from(fieldSetting).where(eq(fieldSetting.buildingId, buildingId)).get()?.plugLogRawDays;
}

export function setPlugLogRawDays(db: Queryable, buildingId: number, plugLogRawDays: number): void {
  db.insert(fieldSetting)
    .values({ buildingId, plugLogRawDays })
    .onConflictDoUpdate({ target: fieldSetting.buildingId, set: { plugLogRawDays } })
    .run();
}

/** Hours and duty of one setting, as a log shows them. */
export function updateSettingUse(
  db: Queryable,
  settingId: number,
  use: { hoursPerYear: number; dutyFraction: number; useBasis: "plug-logger"; useNote: string },
): void {
  db.update(deviceSetting).set(use).where(eq(deviceSetting.id, settingId)).run();
}
