import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { ANSWER_MAIL_STATES, MAIL_SECURITIES } from "@/lib/comfort-reports/mail/mail-kinds";
import { building } from "./building";
import { comfortReportEvent } from "./comfort";

/** The mail server through which a building's mail goes, and what its mail may say. */
export const reportMailServer = sqliteTable(
  "report_mail_server",
  {
    buildingId: integer()
      .primaryKey()
      .references(() => building.id, { onDelete: "cascade" }),
    host: text().notNull(),
    port: integer().notNull(),
    security: text({ enum: MAIL_SECURITIES }).notNull(),
    /** Empty where the server asks for no sign-in. The password is shown nowhere: it is only handed to the server. */
    user: text().notNull().default(""),
    password: text().notNull().default(""),
    fromAddress: text().notNull(),
    /** Address under which people reach this site, without a stroke at its end: links in mail begin with it. */
    siteAddress: text().notNull(),
    /** Whether mail about new reports names the desk, and repeats what people wrote. Both off unless switched on. */
    namesDesk: integer({ mode: "boolean" }).notNull().default(false),
    repeatsNote: integer({ mode: "boolean" }).notNull().default(false),
    changedBy: text().notNull(),
    changedAtMs: integer().notNull(),
  },
  (t) => [check("report_mail_server_port", sql`${t.port} between 1 and 65535`)],
);

/** Who gets mail about new reports, and how far that is. */
export const reportMailRecipient = sqliteTable(
  "report_mail_recipient",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    address: text().notNull(),
    /** Zones whose reports it is told of; null: all. */
    zoneIds: text({ mode: "json" }).$type<number[]>(),
    /** Full hour of the building's clock at which a day's reports come as one mail; null: at once. */
    dailyHour: integer(),
    /** The newest report that was mailed or passed over. */
    lastReportId: integer().notNull(),
    /** Tries of the next mail that failed one after the other, when it is tried again, and what was wrong. */
    failures: integer().notNull().default(0),
    nextTryAtMs: integer().notNull().default(0),
    lastFault: text().notNull().default(""),
    /** When it was given up, until somebody has it tried again. */
    givenUpAtMs: integer(),
    lastSentAtMs: integer(),
    createdBy: text().notNull(),
    createdAtMs: integer().notNull(),
  },
  (t) => [
    uniqueIndex("report_mail_recipient_address").on(t.buildingId, t.address),
    check("report_mail_recipient_hour", sql`${t.dailyHour} between 0 and 23`),
  ],
);

/** An answer that goes by mail to whoever left an address. The address stays with the report alone. */
export const reportAnswerMail = sqliteTable(
  "report_answer_mail",
  {
    eventId: integer()
      .primaryKey()
      .references(() => comfortReportEvent.id, { onDelete: "cascade" }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    state: text({ enum: ANSWER_MAIL_STATES }).notNull().default("waiting"),
    failures: integer().notNull().default(0),
    nextTryAtMs: integer().notNull(),
    lastFault: text().notNull().default(""),
    /** When it was sent or given up. */
    settledAtMs: integer(),
  },
  (t) => [index("report_answer_mail_state").on(t.state, t.nextTryAtMs)],
);
