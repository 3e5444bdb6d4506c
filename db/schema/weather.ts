import { blob, integer, real, sqliteTable, text, uniqueIndex } from "drizzle-orm/sqlite-core";
import { building } from "./building";

/** The typical or actual year of hourly outdoor air temperatures that a building is annualised with: one a building. */
export const weatherYear = sqliteTable(
  "weather_year",
  {
    id: integer().primaryKey({ autoIncrement: true }),
    buildingId: integer()
      .notNull()
      .references(() => building.id, { onDelete: "cascade" }),
    fileName: text().notNull(),
    format: text({ enum: ["epw", "tmy3"] }).notNull(),
    sha256: text("sha256").notNull(),
    station: text().notNull(),
    latitude: real().notNull(),
    longitude: real().notNull(),
    /** Hours east of UTC of the file's standard time. */
    utcOffsetHours: real().notNull(),
    /** 8,760 dry-bulb temperatures in tenths of °C, Int16 little-endian; index 0 is the hour ending 01:00 on 1 January, standard time. */
    dryBulbTenthsC: blob({ mode: "buffer" }).notNull(),
    importedAtMs: integer().notNull(),
  },
  (t) => [uniqueIndex("weather_year_building").on(t.buildingId)],
);
