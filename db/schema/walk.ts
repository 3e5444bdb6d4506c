import { index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { WALK_ENTRY_KINDS } from "@/lib/electrical/walk-entry";
import { building } from "./building";
import { device } from "./device";
import { desk } from "./zone";

/** A walk-through of a building: every desk is looked at once. One at a time is open. */
export const walk = sqliteTable(
  "walk",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    startedAtMs: integer().notNull(),
    startedBy: text().notNull(),
    endedAtMs: integer(),
  },
  (t) => [index("walk_building").on(t.buildingId, t.startedAtMs)],
);

/** What was found at a desk. The id is made on the phone, so that an entry that is sent twice is stored once. */
export const walkEntry = sqliteTable(
  "walk_entry",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    walkId: integer()
      .notNull()
      .references(() => walk.id, { onDelete: "cascade" }),
    clientId: text().notNull(),
    deskId: integer()
      .notNull()
      .references(() => desk.id),
    kind: text({ enum: WALK_ENTRY_KINDS }).notNull(),
    /** The device that was found, seen again or missed. */
    deviceId: integer().references(() => device.id, { onDelete: "set null" }),
    /** When it was entered by the phone's clock, and when it came here. */
    madeAtMs: integer().notNull(),
    receivedAtMs: integer().notNull(),
    enteredBy: text().notNull(),
  },
  (t) => [uniqueIndex("walk_entry_client").on(t.clientId), index("walk_entry_desk").on(t.walkId, t.deskId)],
);
