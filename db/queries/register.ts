import { eq, type SQL, sql } from "drizzle-orm";
import type { AppDatabase, Queryable } from "../client";
import { device, deviceSetting } from "../schema/device";
import { inspection } from "../schema/device-life";
import { desk, zone } from "../schema/zone";
import type { DeviceRow, DeviceSettingRow } from "./devices";

/** A device with its place and its last inspection, its settings written out by the database. */
export type RegisterRecord = Pick<
  DeviceRow,
  | "id"
  | "label"
  | "kind"
  | "deviceClass"
  | "zoneId"
  | "status"
  | "retiredOn"
  | "foundOn"
  | "make"
  | "model"
  | "nameplateW"
  | "nameplateVoltageV"
> & {
  zoneCode: string;
  floor: string;
  deskCode: string | null;
  inspectedOn: string | null;
  nextDueOn: string | null;
  /** `settingsOf` reads it; equal texts are equal settings. */
  settingsText: string;
};

const SETTING_FIELDS = [
  "name",
  "basis",
  "currentA",
  "currentResolutionA",
  "clampTurns",
  "meterAccuracyPct",
  "meterAccuracyCounts",
  "isTrueRms",
  "voltageV",
  "voltageMeasured",
  "openVoltageV",
  "powerFactor",
  "powerW",
  "nameplateW",
  "useBasis",
  "hoursPerYear",
  "dutyFraction",
] as const satisfies readonly (keyof DeviceSettingRow)[];

export type RegisterSetting = Pick<DeviceSettingRow, (typeof SETTING_FIELDS)[number]>;

/**
 * Every device of a building as one row, by the characters of its label. A building may have thousands: rows come as bare values, and the settings of
 * each as one text, which a reader need not take apart when it has seen the same before.
 */
export function listRegister(db: Queryable, buildingId: number): RegisterRecord[] {
  const lastInspection = (column: SQL): SQL<string | null> => sql<string | null>`(select ${column} from ${inspection}
    where ${inspection.deviceId} = ${device.id} order by ${inspection.inspectedOn} desc, ${inspection.id} desc limit 1)`;
  const settings = sql.join(
    SETTING_FIELDS.map((field) => sql`${deviceSetting[field]}`),
    sql`, `,
  );
  return db
    .select({
      id: device.id,
      label: device.label,
      kind: device.kind,
      deviceClass: device.deviceClass,
      zoneId: device.zoneId,
      status: device.status,
      retiredOn: device.retiredOn,
      foundOn: device.foundOn,
      make: device.make,
      model: device.model,
      nameplateW: device.nameplateW,
      nameplateVoltageV: device.nameplateVoltageV,
      zoneCode: zone.code,
      floor: sql<string>`coalesce(nullif(${desk.floor}, ''), ${zone.floor})`,
      deskCode: sql<string | null>`${desk.code}`,
      inspectedOn: lastInspection(sql`${inspection.inspectedOn}`),
      nextDueOn: lastInspection(sql`${inspection.nextDueOn}`),
      settingsText: sql<string>`(select json_group_array(json_array(${settings}) order by ${deviceSetting.position})
        from ${deviceSetting} where ${deviceSetting.deviceId} = ${device.id})`,
    })
    .from(device)
    .innerJoin(zone, eq(zone.id, device.zoneId))
    .leftJoin(desk, eq(desk.id, device.deskId))
    .where(eq(device.buildingId, buildingId))
    .orderBy(device.label)
    .all();
}

/** Reads differently after any write to the database: through this connection, or through another that has ended its own. */
export function changeStamp(db: AppDatabase): string {
  const row = db.$client
    .prepare<[], { own: number; others: number }>(
      "select total_changes() as own, (select data_version from pragma_data_version) as others",
    )
    .get();
  return `${row?.own} ${row?.others}`;
}

const BOOLEANS: ReadonlySet<string> = new Set(["isTrueRms", "voltageMeasured"]);

/** The settings of a record, in their order. */
export function settingsOf({ settingsText }: Pick<RegisterRecord, "settingsText">): RegisterSetting[] {
  const rows = JSON.parse(settingsText) as unknown[][];
  return rows.map((values) => {
    const setting: Record<string, unknown> = {};
    SETTING_FIELDS.forEach((field, i) => {
      const value = values[i] ?? null;
      setting[field] = BOOLEANS.has(field) && value !== null ? value === 1 : value;
    });
    return setting as RegisterSetting;
  });
}
