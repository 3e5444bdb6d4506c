import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { CONTROL_EFFECTS } from "@/lib/electrical/control-effect";
import { DEVICE_STATUSES } from "@/lib/electrical/device-status";
import { ITEM_OUTCOMES, SEVERITIES } from "@/lib/electrical/inspection/inspection-words";
import { device } from "./device";

/** A step in a device's life. Rows are never changed; the last by day, then by id, is the status in force. */
export const deviceEvent = sqliteTable(
  "device_event",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    status: text({ enum: DEVICE_STATUSES }).notNull(),
    /** `YYYY-MM-DD`, building's calendar. */
    onDate: text().notNull(),
    note: text().notNull().default(""),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [index("device_event_device").on(t.deviceId, t.onDate, t.id)],
);

/** A control of a device and what turning it changes, measured between its ends: "this dial changes nothing". */
export const deviceControl = sqliteTable(
  "device_control",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    position: integer().notNull(),
    name: text().notNull(),
    effect: text({ enum: CONTROL_EFFECTS }).notNull(),
    /** Watts read at either end of the control, all else left alone. */
    lowEndW: real("low_end_w"),
    highEndW: real("high_end_w"),
    note: text().notNull().default(""),
  },
  (t) => [
    uniqueIndex("device_control_position").on(t.deviceId, t.position),
    check(
      "device_control_power",
      sql`coalesce(${t.lowEndW}, 0) between 0 and 10000 and coalesce(${t.highEndW}, 0) between 0 and 10000`,
    ),
  ],
);

/** One inspection of a device by the checklist of a jurisdiction. */
export const inspection = sqliteTable(
  "inspection",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    deviceId: integer()
      .notNull()
      .references(() => device.id, { onDelete: "cascade" }),
    inspectedOn: text().notNull(),
    /** Id of a checklist in `lib/electrical/inspection`. */
    checklist: text().notNull(),
    /** When the next one is due; null when none is planned. */
    nextDueOn: text(),
    note: text().notNull().default(""),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [index("inspection_device").on(t.deviceId, t.inspectedOn, t.id)],
);

/** What was seen of one item; a failed one stays open until the day it was put right. */
export const inspectionItem = sqliteTable(
  "inspection_item",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    inspectionId: integer()
      .notNull()
      .references(() => inspection.id, { onDelete: "cascade" }),
    /** Id of an item of the checklist, and its severity as it was then. */
    itemId: text().notNull(),
    severity: text({ enum: SEVERITIES }).notNull(),
    outcome: text({ enum: ITEM_OUTCOMES }).notNull(),
    note: text().notNull().default(""),
    dueOn: text(),
    correctedOn: text(),
    correctedBy: text(),
    correctionNote: text().notNull().default(""),
  },
  (t) => [
    uniqueIndex("inspection_item_once").on(t.inspectionId, t.itemId),
    check("inspection_item_corrected", sql`${t.correctedOn} is null or ${t.outcome} = 'fail'`),
  ],
);
