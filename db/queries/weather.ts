import { eq } from "drizzle-orm";
import type { Queryable } from "../client";
import { weatherYear } from "../schema/weather";

export type WeatherYearRow = typeof weatherYear.$inferSelect;
export type NewWeatherYear = typeof weatherYear.$inferInsert;

export function findWeatherYear(db: Queryable, buildingId: number): WeatherYearRow | undefined {
  return db.select().from(weatherYear).where(eq(weatherYear.buildingId, buildingId)).get();
}

/** A building has one weather year: the new one takes the place of the old. */
export function replaceWeatherYear(db: Queryable, row: NewWeatherYear): WeatherYearRow {
  db.delete(weatherYear).where(eq(weatherYear.buildingId, row.buildingId)).run();
  return db.insert(weatherYear).values(row).returning().get();
}
