import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { CHANGE_DECISIONS, CHANGED_SETTINGS } from "@/lib/proposals/setpoint-change";
import { building } from "./building";
import { proposal } from "./proposal";
import { zone } from "./zone";

/** What was really changed in a zone: a move of a trended setpoint that someone confirmed or rejected, or an entry by hand. */
export const setpointChange = sqliteTable(
  "setpoint_change",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id, { onDelete: "cascade" }),
    proposalId: integer().references(() => proposal.id, { onDelete: "set null" }),
    setting: text({ enum: CHANGED_SETTINGS }).notNull(),
    origin: text({ enum: ["detected", "entered"] }).notNull(),
    decision: text({ enum: CHANGE_DECISIONS }).notNull(),
    /** First second at the new value. */
    atUtcSeconds: integer().notNull(),
    /** In the unit of the setting: °C, m³/s, h. */
    fromValue: real().notNull(),
    toValue: real().notNull(),
    changedBy: text().notNull().default(""),
    reason: text().notNull().default(""),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [
    uniqueIndex("setpoint_change_once").on(t.zoneId, t.setting, t.atUtcSeconds),
    index("setpoint_change_building").on(t.buildingId, t.atUtcSeconds),
    check("setpoint_change_moves", sql`${t.fromValue} <> ${t.toValue}`),
  ],
);
