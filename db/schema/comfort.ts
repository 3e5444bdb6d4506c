import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { REPORT_ACTIONS, REPORT_STATES } from "@/lib/comfort-reports/report-state";
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

/** How a report came in; all but the first are entered by facilities people. */
export const REPORT_ORIGINS = ["link", "phone", "mail", "in-person", "import", "command-line"] as const;
export type ReportOrigin = (typeof REPORT_ORIGINS)[number];

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
    sun: integer({ mode: "boolean" }),
    dryAir: integer({ mode: "boolean" }),
    /** Ids of `lib/comfort-reports/answers`: since when, and where on the body, several joined by commas; null: not said. */
    sinceWhen: text(),
    bodyParts: text(),
    /** Where an answer may be sent; deleted by the retention rule. */
    replyAddress: text(),
    /** Language in which the occupant wrote, as a BCP 47 tag. */
    language: text().notNull().default("en"),
    origin: text({ enum: REPORT_ORIGINS }).notNull().default("link"),
    /** Who entered it, where it did not come through a link. */
    enteredBy: text(),
    /** Secret address at which whoever sent it can follow it; null for reports that were not sent through a link. */
    followToken: text(),
    state: text({ enum: REPORT_STATES }).notNull().default("received"),
    /** When somebody first answered, and when it was last closed. */
    answeredAtMs: integer(),
    closedAtMs: integer(),
    /**
     * Random, shared by reports of one desk, or one desk's link, on one local day: kept in the place of the desk once that is
     * deleted; null before.
     */
    personDay: text(),
    /** Random id sent by the form, so that a repeated post is one report. */
    submissionId: text(),
  },
  (t) => [
    index("comfort_report_zone_time").on(t.zoneId, t.reportedAtMs),
    index("comfort_report_building_time").on(t.buildingId, t.reportedAtMs),
    index("comfort_report_link_time").on(t.linkId, t.reportedAtMs),
    index("comfort_report_building_state_time").on(t.buildingId, t.state, t.reportedAtMs),
    uniqueIndex("comfort_report_submission").on(t.submissionId),
    uniqueIndex("comfort_report_follow").on(t.followToken),
    check("comfort_report_vote", sql`${t.thermalSensation} between -3 and 3`),
  ],
);

/** What was done about a report, in the order in which it was: changes of state, actions, answers. Never edited. */
export const comfortReportEvent = sqliteTable(
  "comfort_report_event",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    reportId: integer()
      .notNull()
      .references(() => comfortReport.id, { onDelete: "cascade" }),
    atMs: integer().notNull(),
    by: text().notNull(),
    /** The state that it was brought to; null where the state stayed. */
    state: text({ enum: REPORT_STATES }),
    /** What was done, and when it took effect; null for a mere change of state or an answer. */
    action: text({ enum: REPORT_ACTIONS }),
    actedAtMs: integer(),
    /** What was changed, for facilities people. */
    note: text().notNull().default(""),
    /** What the occupant reads. */
    answer: text().notNull().default(""),
  },
  (t) => [index("comfort_report_event_report").on(t.reportId, t.id)],
);

/** A report beyond what a link or an address sends in an hour: kept aside until somebody looks, and counted nowhere. */
export const heldReport = sqliteTable(
  "held_report",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    linkId: integer()
      .notNull()
      .references(() => comfortLink.id),
    heldAtMs: integer().notNull(),
    followToken: text().notNull(),
    submissionId: text(),
    /** What was sent, as JSON. */
    sent: text().notNull(),
  },
  (t) => [
    index("held_report_building_time").on(t.buildingId, t.heldAtMs),
    index("held_report_link_time").on(t.linkId, t.heldAtMs),
    uniqueIndex("held_report_submission").on(t.submissionId),
    uniqueIndex("held_report_follow").on(t.followToken),
  ],
);

/** How long a building keeps what a report says of its sender; without a row the usual days hold. */
export const reportRetention = sqliteTable(
  "report_retention",
  {
    buildingId: integer()
      .primaryKey()
      .references(() => building.id, { onDelete: "cascade" }),
    /** Days after a report was closed until its reply address is deleted. */
    replyAddressDays: integer().notNull(),
    /** Days after a report was made until its note, and what else was kept of its sender, is deleted. */
    noteDays: integer().notNull(),
    /** Days after a report was made until its desk is deleted, and its zone alone is kept. */
    deskDays: integer().notNull().default(365),
    changedBy: text().notNull(),
    changedAtMs: integer().notNull(),
  },
  (t) => [
    check("report_retention_reply", sql`${t.replyAddressDays} between 0 and 365`),
    check("report_retention_note", sql`${t.noteDays} between 1 and 1095`),
  ],
);

/** Where new reports of a building are posted to, and how far that is. */
export const reportWebhook = sqliteTable("report_webhook", {
  buildingId: integer()
    .primaryKey()
    .references(() => building.id, { onDelete: "cascade" }),
  url: text().notNull(),
  /** Signs what is posted; kept readable, since whoever sets the receiver up has to copy it. */
  secret: text().notNull(),
  /** The newest report that the receiver has taken. */
  lastReportId: integer().notNull(),
  /** Posts of the next report that failed one after the other, when it is tried again, and what was wrong. */
  failures: integer().notNull().default(0),
  nextTryAtMs: integer().notNull().default(0),
  lastFault: text().notNull().default(""),
  lastTakenAtMs: integer(),
  createdBy: text().notNull(),
  createdAtMs: integer().notNull(),
});
