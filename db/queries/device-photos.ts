import { and, count, desc, eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { devicePhoto } from "../schema/device-photo";

export type DevicePhotoRow = typeof devicePhoto.$inferSelect;
export type NewDevicePhoto = typeof devicePhoto.$inferInsert;

export function insertDevicePhoto(db: Queryable, row: NewDevicePhoto): DevicePhotoRow {
  return db.insert(devicePhoto).values(row).returning().get();
}

export function findDevicePhoto(db: Queryable, deviceId: number, id: number): DevicePhotoRow | undefined {
  return db
    .select()
    .from(devicePhoto)
    .where(and(eq(devicePhoto.deviceId, deviceId), eq(devicePhoto.id, id)))
    .get();
}

/** Photos of a device, the newest first. */
export function listDevicePhotos(db: Queryable, deviceId: number): DevicePhotoRow[] {
  return db
    .select()
    .from(devicePhoto)
    .where(eq(devicePhoto.deviceId, deviceId))
    .orderBy(desc(devicePhoto.enteredAtMs), desc(devicePhoto.id))
    .all();
}

export function deleteDevicePhoto(db: Queryable, id: number): void {
  db.delete(devicePhoto).where(eq(devicePhoto.id, id)).run();
}

/** Photos that are kept in one file: the same picture twice is one. */
export function countPhotosOf(db: Queryable, sha256: string): number {
  return db.select({ photos: count() }).from(devicePhoto).where(eq(devicePhoto.sha256, sha256)).get()?.photos ?? 0;
}
