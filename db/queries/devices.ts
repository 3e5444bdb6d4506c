import { and, asc, count, eq, isNull } from "drizzle-orm";
import { naturalCompare } from "@/lib/order/natural-compare";
import type { Queryable } from "../client";
import { device, deviceSetting } from "../schema/device";
import { deviceEvent } from "../schema/device-life";

export type DeviceRow = typeof device.$inferSelect;
export type NewDevice = typeof device.$inferInsert;
export type DeviceSettingRow = typeof deviceSetting.$inferSelect;
export type NewDeviceSetting = typeof deviceSetting.$inferInsert;
export type DeviceEventRow = typeof deviceEvent.$inferSelect;
export type NewDeviceEvent = typeof deviceEvent.$inferInsert;
export type DeviceWithSettings = DeviceRow & { settings: DeviceSettingRow[] };

export function insertDevice(db: Queryable, row: NewDevice): DeviceRow {
  return db.insert(device).values(row).returning().get();
}

export function updateDevice(db: Queryable, id: number, row: Partial<NewDevice>): void {
  db.update(device).set(row).where(eq(device.id, id)).run();
}

/** Devices stand where their desk stands. */
export function moveDevicesOfDesk(db: Queryable, deskId: number, zoneId: number): void {
  db.update(device).set({ zoneId }).where(eq(device.deskId, deskId)).run();
}

/** Puts `settings` in place of the device's settings, in the order given. */
export function replaceSettings(
  db: Queryable,
  deviceId: number,
  settings: readonly Omit<NewDeviceSetting, "deviceId" | "position">[],
): void {
  db.delete(deviceSetting).where(eq(deviceSetting.deviceId, deviceId)).run();
  settings.forEach((each, position) => {
    db.insert(deviceSetting)
      .values({ ...each, deviceId, position })
      .run();
  });
}

export function findDevice(db: Queryable, buildingId: number, id: number): DeviceWithSettings | undefined {
  const row = db
    .select()
    .from(device)
    .where(and(eq(device.buildingId, buildingId), eq(device.id, id)))
    .get();
  return row && { ...row, settings: settingsOf(db, row.id) };
}

export function findDeviceByLabel(db: Queryable, buildingId: number, label: string): DeviceRow | undefined {
  return db
    .select()
    .from(device)
    .where(and(eq(device.buildingId, buildingId), eq(device.label, label)))
    .get();
}

function settingsOf(db: Queryable, deviceId: number): DeviceSettingRow[] {
  return db
    .select()
    .from(deviceSetting)
    .where(eq(deviceSetting.deviceId, deviceId))
    .orderBy(asc(deviceSetting.position))
    .all();
}

export function insertDeviceEvent(db: Queryable, row: NewDeviceEvent): void {
  db.insert(deviceEvent).values(row).run();
}

/** Steps of a device's life, the first first. */
export function listDeviceEvents(db: Queryable, deviceId: number): DeviceEventRow[] {
  return db
    .select()
    .from(deviceEvent)
    .where(eq(deviceEvent.deviceId, deviceId))
    .orderBy(asc(deviceEvent.onDate), asc(deviceEvent.id))
    .all();
}

/** Steps of every device of a building, the first first. */
export function listBuildingDeviceEvents(db: Queryable, buildingId: number): (DeviceEventRow & { zoneId: number })[] {
  return db
    .select({ event: deviceEvent, zoneId: device.zoneId })
    .from(deviceEvent)
    .innerJoin(device, eq(device.id, deviceEvent.deviceId))
    .where(eq(device.buildingId, buildingId))
    .orderBy(asc(deviceEvent.onDate), asc(deviceEvent.id))
    .all()
    .map(({ event, zoneId }) => ({ ...event, zoneId }));
}

export function listDeviceKinds(db: Queryable, buildingId: number): Map<number, DeviceRow["kind"]> {
  const rows = db
    .select({ id: device.id, kind: device.kind })
    .from(device)
    .where(eq(device.buildingId, buildingId))
    .all();
  return new Map(rows.map(({ id, kind }) => [id, kind]));
}

/** Devices in use by zone id and kind. */
export function countDevicesByZone(
  db: Queryable,
  buildingId: number,
): Map<number, Partial<Record<DeviceRow["kind"], number>>> {
  const rows = db
    .select({ zoneId: device.zoneId, kind: device.kind, devices: count() })
    .from(device)
    .where(and(eq(device.buildingId, buildingId), isNull(device.retiredOn)))
    .groupBy(device.zoneId, device.kind)
    .all();
  const found = new Map<number, Partial<Record<DeviceRow["kind"], number>>>();
  for (const { zoneId, kind, devices } of rows) found.set(zoneId, { ...found.get(zoneId), [kind]: devices });
  return found;
}

/** All devices of a building by label, retired ones included, with their settings: two queries whatever their number. */
export function listDevices(db: Queryable, buildingId: number): DeviceWithSettings[] {
  const rows = db.select().from(device).where(eq(device.buildingId, buildingId)).all();
  rows.sort((a, b) => naturalCompare(a.label, b.label));
  const settings = db
    .select({ setting: deviceSetting })
    .from(deviceSetting)
    .innerJoin(device, eq(device.id, deviceSetting.deviceId))
    .where(eq(device.buildingId, buildingId))
    .orderBy(asc(deviceSetting.deviceId), asc(deviceSetting.position))
    .all();
  const devices = new Map<number, DeviceWithSettings>(rows.map((row) => [row.id, { ...row, settings: [] }]));
  for (const { setting } of settings) devices.get(setting.deviceId)?.settings.push(setting);
  return [...devices.values()];
}
