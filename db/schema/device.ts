import { sql } from "drizzle-orm";
import { check, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { MAPPING_BASES, OUTLET_KINDS } from "@/lib/electrical/circuit/circuit-kinds";
import { DEVICE_KINDS, POWER_BASES } from "@/lib/electrical/device-kind";
import { DEVICE_STATUSES } from "@/lib/electrical/device-status";
import { USE_BASES } from "@/lib/electrical/use-basis";
import { branchCircuit } from "./branch-circuit";
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
    /** Day on which it was removed, null while it is in the building: follows `status`. */
    retiredOn: text(),
    /** The status in force; `device_event` holds how it came to it. */
    status: text({ enum: DEVICE_STATUSES }).notNull().default("found"),
    make: text().notNull().default(""),
    model: text().notNull().default(""),
    /** Date code of its making, as printed. */
    dateCode: text().notNull().default(""),
    /** As printed on its label, apart from what was measured. */
    nameplateW: real("nameplate_w"),
    nameplateA: real("nameplate_a"),
    nameplateVoltageV: real(),
    /** A way to reach whoever brought it; dropped when it is removed. */
    ownerContact: text().notNull().default(""),
    circuitId: integer().references(() => branchCircuit.id),
    circuitMapping: text({ enum: MAPPING_BASES }).notNull().default("assumed"),
    outletKind: text({ enum: OUTLET_KINDS }).notNull().default("unknown"),
    /** Names the outlet, so that devices on one twin socket are known to share it. */
    outletLabel: text().notNull().default(""),
    isFastened: integer({ mode: "boolean" }).notNull().default(false),
    /** Longest run at its highest setting in a plug log [h]; null without a log. */
    longestRunHours: real(),
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
    /** What the clamp meter showed, and how often the conductor passes its jaws: 1, or 10 in the loop of a line splitter. */
    rawReadingA: real(),
    clampTurns: integer().notNull().default(1),
    /** Current of the device: the reading over the turns. */
    currentA: real(),
    /** Step of the meter's last digit. */
    currentResolutionA: real(),
    meterName: text().notNull().default(""),
    /** Stated accuracy: a share of the reading and counts of its last digit. */
    meterAccuracyPct: real(),
    meterAccuracyCounts: integer(),
    /** Null while nobody has said. */
    isTrueRms: integer({ mode: "boolean" }),
    voltageV: real(),
    /** 1 when the voltage was read at the outlet under this load, 0 when the nominal was taken. */
    voltageMeasured: integer({ mode: "boolean" }).notNull().default(false),
    /** Voltage at the outlet with the device off. */
    openVoltageV: real(),
    powerFactor: real(),
    /** Watts as read by a plug-in meter. */
    powerW: real(),
    /** Watts printed on the nameplate for this setting. */
    nameplateW: real("nameplate_w"),
    /** Where a dial or a step of speed stood, as its scale names it; empty where there is none. */
    fanSpeed: text().notNull().default(""),
    /** How the hours are known, and the schedule that they were worked out from. */
    useBasis: text({ enum: USE_BASES }).notNull().default("entered"),
    hoursPerDay: real(),
    daysPerYear: real(),
    /** Months or season that the days lie in, and whatever else was told. */
    useNote: text().notNull().default(""),
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
