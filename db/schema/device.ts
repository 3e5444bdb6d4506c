import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { DEVICE_KINDS, POWER_BASES } from "@/lib/electrical/device-kind";
import { building } from "./building";
import { desk, zone } from "./zone";

/** A portable space heater or a personal fan, at a desk or loose in a zone. */
export const device = sqliteTable(
  "device",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id),
    deskId: integer().references(() => desk.id),
    kind: text({ enum: DEVICE_KINDS }).notNull(),
    /** Id of a class in `lib/electrical/device-classes`. */
    deviceClass: text().notNull(),
    label: text().notNull(),
    hasThermostat: integer({ mode: "boolean" }).notNull().default(false),
    /** `YYYY-MM-DD`, building's calendar. */
    foundOn: text().notNull(),
    retiredOn: text(),
    note: text().notNull().default(""),
    createdAtMs: integer().notNull(),
    updatedAtMs: integer().notNull(),
  },
  (t) => [uniqueIndex("device_label").on(t.buildingId, t.label)],
);

/** One setting of a device (off, fan only, low heat, high heat ...) with what was read and how long it is used. */
export const deviceSetting = sqliteTable(
  "device_setting",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    position: integer().notNull(),
    name: text().notNull(),
    basis: text({ enum: POWER_BASES }).notNull(),
    /** Reading of the clamp meter and its display resolution. */
    currentA: real(),
    currentResolutionA: real(),
    voltageV: real(),
    /** 1 when the voltage was read at the outlet, 0 when the nominal was taken. */
    voltageMeasured: integer({ mode: "boolean" }).notNull().default(false),
    powerFactor: real(),
    /** Watts as read by a plug-in meter, as printed on the nameplate or of the class, by basis. */
    powerW: real(),
    /** Hours a year for which the setting is selected, and the share of them in which the thermostat lets it run. */
    hoursPerYear: real().notNull().default(0),
    dutyFraction: real().notNull().default(1),
  },
  (t) => [
    uniqueIndex("device_setting_position").on(t.deviceId, t.position),
    check("setting_current", sql`${t.currentA} is null or ${t.currentA} between 0 and 100`),
    check("setting_voltage", sql`${t.voltageV} is null or ${t.voltageV} between 50 and 480`),
    check("setting_power_factor", sql`${t.powerFactor} is null or (${t.powerFactor} > 0 and ${t.powerFactor} <= 1)`),
    check("setting_power", sql`${t.powerW} is null or ${t.powerW} between 0 and 10000`),
    check("setting_hours", sql`${t.hoursPerYear} between 0 and 8784`),
    check("setting_duty", sql`${t.dutyFraction} between 0 and 1`),
  ],
);
