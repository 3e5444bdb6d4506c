import { index, integer, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** What a collector shows to bring trend files and readings to one building. The token itself is not kept. */
export const collectorToken = sqliteTable(
  "collector_token",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    /** Name of the program or the export that it was made for. */
    collector: text().notNull(),
    /** SHA-256 of the token, in hexadecimal: enough, since the token is 256 random bits. */
    tokenHash: text().notNull(),
    createdAtMs: integer().notNull(),
    createdBy: text().notNull(),
    lastUsedAtMs: integer(),
    revokedAtMs: integer(),
  },
  (t) => [uniqueIndex("collector_token_hash").on(t.tokenHash), index("collector_token_building").on(t.buildingId)],
);
