import { sql } from "drizzle-orm";
import { check, index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { VERDICT_STANCES } from "@/lib/trends/diagnosis/verdict-stance";
import { building } from "./building";
import { zone } from "./zone";

/** What someone said of a zone's verdict, with the verdict as it was then. Rows are never changed: a newer one stands beside it. */
export const verdictNote = sqliteTable(
  "verdict_note",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    zoneId: integer()
      .notNull()
      .references(() => zone.id, { onDelete: "cascade" }),
    stance: text({ enum: VERDICT_STANCES }).notNull(),
    note: text().notNull().default(""),
    /** Verdict of the time, and the codes of its causes in their order. */
    verdict: text().notNull(),
    causes: text({ mode: "json" }).$type<string[]>().notNull(),
    /** Hash of the zone's data of the time: revisions of its trends, its reports, devices and record. */
    dataState: text().notNull(),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
  },
  (t) => [
    index("verdict_note_zone").on(t.zoneId, t.enteredAtMs),
    check("verdict_note_says_something", sql`${t.stance} = 'confirmed' or length(${t.note}) > 0`),
  ],
);
