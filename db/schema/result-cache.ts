import { integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** Results of analyses by what they depend on. Safe to empty at any time. */
export const resultCache = sqliteTable(
  "result_cache",
  {
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** What was computed, e.g. `zone-exposure/12`. */
    subject: text().notNull(),
    /** Hash of the parameters and the revisions of the series that were read. */
    fingerprint: text().notNull(),
    result: text({ mode: "json" }).$type<unknown>().notNull(),
    computedAtMs: integer().notNull(),
  },
  (t) => [primaryKey({ columns: [t.buildingId, t.subject] })],
);
