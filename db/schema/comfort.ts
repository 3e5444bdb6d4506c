import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";
import { desk, zone } from "./zone";

/** A revocable link with which an occupant of a zone or desk reports comfort without an account. */
export const comfortLink = sqliteTable(
  "comfort_link",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id),
    deskId: integer().references(() => desk.id),
    /** 128 random bits; kept readable because the link is printed again and again. */
    token: text().notNull(),
    createdAtMs: integer().notNull(),
    createdBy: text().notNull(),
    revokedAtMs: integer(),
  },
  (t) => [uniqueIndex("comfort_link_token").on(t.token)],
);

export const PREFERENCES = ["cooler", "no-change", "warmer"] as const;
export type Preference = (typeof PREFERENCES)[number];

export const comfortReport = sqliteTable(
  "comfort_report",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id),
    deskId: integer().references(() => desk.id),
    linkId: integer().references(() => comfortLink.id),
    reportedAtMs: integer().notNull(),
    /** Thermal sensation vote on the seven-point scale, -3 cold to +3 hot. */
    thermalSensation: integer().notNull(),
    preference: text({ enum: PREFERENCES }).notNull(),
    heaterInUse: integer({ mode: "boolean" }),
    fanInUse: integer({ mode: "boolean" }),
    draught: integer({ mode: "boolean" }),
    /** Ids of `lib/comfort/ensembles` and `lib/comfort/activity`; null where the occupant did not say. */
    clothing: text(),
    activity: text(),
    note: text().notNull().default(""),
    /** Random id sent by the form, so that a repeated post is one report. */
    submissionId: text(),
  },
  (t) => [
    index("comfort_report_zone_time").on(t.zoneId, t.reportedAtMs),
    index("comfort_report_building_time").on(t.buildingId, t.reportedAtMs),
    uniqueIndex("comfort_report_submission").on(t.submissionId),
    check("comfort_report_vote", sql`${t.thermalSensation} between -3 and 3`),
  ],
);
