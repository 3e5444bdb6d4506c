import { sql } from "drizzle-orm";
import { check, index, integer, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** A building's own value of an assumption. Rows are never changed: a newer one supersedes, a withdrawn one is closed. */
export const assumptionOverride = sqliteTable(
  "assumption_override",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    assumptionId: text().notNull(),
    value: real().notNull(),
    low: real().notNull(),
    high: real().notNull(),
    reason: text().notNull(),
    enteredBy: text().notNull(),
    enteredAtMs: integer().notNull(),
    endedAtMs: integer(),
    endedBy: text(),
  },
  (t) => [
    index("assumption_override_current").on(t.buildingId, t.assumptionId, t.endedAtMs),
    check("assumption_override_order", sql`${t.low} <= ${t.value} and ${t.value} <= ${t.high}`),
  ],
);
