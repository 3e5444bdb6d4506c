import { and, asc, eq, max } from "drizzle-orm";
import type { Queryable } from "../client";
import { deviceControl } from "../schema/device-life";

export type DeviceControlRow = typeof deviceControl.$inferSelect;
export type NewDeviceControl = typeof deviceControl.$inferInsert;

export function listDeviceControls(db: Queryable, deviceId: number): DeviceControlRow[] {
  return db
    .select()
    .from(deviceControl)
    .where(eq(deviceControl.deviceId, deviceId))
    .orderBy(asc(deviceControl.position))
    .all();
}

export function insertDeviceControl(db: Queryable, row: Omit<NewDeviceControl, "position">): void {
  const last = db
    .select({ position: max(deviceControl.position) })
    .from(deviceControl)
    .where(eq(deviceControl.deviceId, row.deviceId))
    .get();
  db.insert(deviceControl)
    .values({ ...row, position: (last?.position ?? -1) + 1 })
    .run();
}

export function deleteDeviceControl(db: Queryable, deviceId: number, id: number): void {
  db.delete(deviceControl)
    .where(and(eq(deviceControl.deviceId, deviceId), eq(deviceControl.id, id)))
    .run();
}
